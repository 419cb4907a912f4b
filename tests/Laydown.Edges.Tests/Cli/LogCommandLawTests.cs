using System.Text.Json;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>The log from the command line, on a shop on disk.</summary>
public sealed class LogCommandLawTests
{
    [Fact]
    public async Task A_run_is_started_measured_stopped_and_teaches_its_time()
    {
        using CliShop shop = new();
        string run = await PlannedAsync(shop);
        Assert.Equal(0, (await shop.AskAsync("log", "start", run, "--at", "2026-11-25T00:10Z", "--by", "Ada")).Code);
        JsonElement thick = (await shop.AskAsync("log", "thickness", run, "3.0", "3.1", "2.9", "3.0", "3.05", "--at", "2026-11-25T00:11Z")).Answer;
        Assert.Equal(5, thick.GetProperty("thickness").GetProperty("pointsMm").GetArrayLength());
        JsonElement done = (await shop.AskAsync("log", "stop", run, "--good", "1", "--spoiled", "1", "--made", "2", "--at", "2026-11-25T00:40Z")).Answer;
        Assert.Equal(30, done.GetProperty("actual").GetProperty("minutes").GetDouble(), 9);

        JsonElement remake = (await shop.AskAsync("log", "remake", run, "--cause", "Dust", "--pieces", "1", "--minutes", "6", "--at", "2026-11-25T00:41Z")).Answer.GetProperty("remake");
        Assert.True(remake.GetProperty("cost").GetProperty("cents").GetInt64() > 0);
        Assert.Contains("min ×", remake.GetProperty("because").GetString(), StringComparison.Ordinal);
        JsonElement page = (await shop.AskAsync("log", "list", "--rows", "3")).Answer;
        Assert.Equal((4, 3), (page.GetProperty("all").GetInt32(), page.GetProperty("entries").GetArrayLength()));
        JsonElement learnt = (await shop.AskAsync("log", "learn")).Answer;
        JsonElement group = Assert.Single(learnt.GetProperty("groups").EnumerateArray());
        Assert.Equal(1, group.GetProperty("runs").GetInt32());
        JsonElement review = (await shop.AskAsync("log", "review", "--from", "2026-11-01", "--to", "2026-12-01")).Answer;
        Assert.Equal(1, review.GetProperty("runs").GetInt32());

        // A last day is contained, as on the page; a time is not.
        foreach ((string to, int runs) in new[] { ("2026-11-25", 1), ("2026-11-25T00:40Z", 0), ("2026-11-25T00:41Z", 1) })
            Assert.Equal(runs, (await shop.AskAsync("log", "review", "--from", "2026-11-25", "--to", to)).Answer.GetProperty("runs").GetInt32());
    }

    [Fact]
    public async Task Overhead_that_was_spent_stands_against_what_runs_carried()
    {
        using CliShop shop = new();
        string run = await PlannedAsync(shop);
        long carried = (await shop.AskAsync("runs")).Answer.GetProperty("runs")[0].GetProperty("run").GetProperty("cost").GetProperty("overhead").GetProperty("cents").GetInt64();
        await shop.AskAsync("log", "start", run, "--at", "2026-11-24T08:10Z");
        await shop.AskAsync("log", "stop", run, "--good", "1", "--at", "2026-11-24T08:40Z");
        JsonElement entry = (await shop.AskAsync("log", "overhead", "spent", "100.50", "--what", "rent", "--day", "2026-11-10")).Answer;
        Assert.Equal(("overhead", 10_050), (entry.GetProperty("overhead").GetProperty("name").GetString(), entry.GetProperty("overhead").GetProperty("amount").GetProperty("cents").GetInt64()));
        await shop.AskAsync("log", "overhead", "spent", "7", "--what", "twice", "--day", "2026-11-11");
        Assert.Equal(0, (await shop.AskAsync("log", "strike", "4", "--note", "told twice")).Code);

        JsonElement review = await ReviewAsync("--from", "2026-11-01", "--to", "2026-11-30");
        Assert.Equal((1, carried, 10_050L, carried - 10_050), (review.GetProperty("runs").GetInt32(), Cents("applied"), Cents("spent"), Cents("over")));
        Assert.Equal(0, (await ReviewAsync("--from", "2026-10-01", "--to", "2026-10-31")).GetProperty("runs").GetInt32());
        Assert.Equal(1, (await ReviewAsync("--from", "2026-11-01", "--to", "2026-12-31", "--count", "due")).GetProperty("runs").GetInt32());

        foreach (string[] words in (string[][])[["spent", "0", "--what", "x"], ["spent", "-5", "--what", "x"], ["spent", "5", "--what", " "], ["spent", "5", "--what", "x", "--kind", "gold"], ["spent", "5", "--what", "x", "--day", "2090-01-01"], ["--from", "2026-11-02", "--to", "2026-11-01"]])
            Assert.Equal(3, (await shop.AskAsync(["log", "overhead", .. words])).Code);
        Assert.Equal(2, (await shop.AskAsync("log", "overhead", "--from", "soon")).Code);
        Assert.Equal(5, (await shop.AskAsync("log", "list")).Answer.GetProperty("all").GetInt32());

        async Task<JsonElement> ReviewAsync(params string[] words) => (await shop.AskAsync(["log", "overhead", .. words])).Answer.GetProperty("review");
        long Cents(string name) => review.GetProperty(name).GetProperty("cents").GetInt64();
    }

    [Fact]
    public async Task What_cannot_be_is_refused_and_leaves_nothing()
    {
        using CliShop shop = new();
        string run = await PlannedAsync(shop);
        (int code, JsonElement answer) = await shop.AskAsync("log", "stop", "R-none", "--good", "1");
        Assert.Equal(3, code);
        Assert.Equal("/runId", answer.GetProperty("faults")[0].GetProperty("field").GetString());
        Assert.Equal(3, (await shop.AskAsync("log", "stop", run, "--good", "1")).Code);
        Assert.Equal(3, (await shop.AskAsync("log", "start", run, "--at", "2090-01-01T00:00Z")).Code);
        Assert.Equal(3, (await shop.AskAsync("log", "ink", "no-tank", "5", "--run", run)).Code);
        (code, answer) = await shop.AskAsync("log", "remake", run, "--cause", "Dust", "--pieces", "1", "--item", "TW-none-1");
        Assert.Equal((3, "/remake/itemId"), (code, answer.GetProperty("faults")[0].GetProperty("field").GetString()));
        foreach (string[] words in (string[][])[["review"], ["list"], ["charts", "Across"]])
        {
            (code, answer) = await shop.AskAsync(["log", .. words, "--from", "2026-11-26", "--to", "2026-11-01"]);
            Assert.Equal((2, "to"), (code, answer.GetProperty("faults")[0].GetProperty("field").GetString()));
        }

        Assert.Equal(2, (await shop.AskAsync("log", "start", run, "--at", "soon")).Code);
        Assert.Equal(0, (await shop.AskAsync("log", "list")).Answer.GetProperty("all").GetInt32());
    }

    private static async Task<string> PlannedAsync(CliShop shop)
    {
        shop.Put("TW-7001", (CliShop.Board("TW-7001-1", "a.pdf"), CliShop.Pdf()));
        JsonElement plan = (await shop.AskAsync("plan")).Answer;
        return plan.GetProperty("runs")[0].GetProperty("run").GetProperty("id").GetString()!;
    }
}
