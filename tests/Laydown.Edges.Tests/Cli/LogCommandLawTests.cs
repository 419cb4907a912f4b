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
