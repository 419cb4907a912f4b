using System.Text.Json;
using Laydown.Formats.Json;
using Laydown.Plan.Week;
using Xunit;

namespace Laydown.Edges.Tests.CommandLines;

/// <summary>The week on the command line, of a shop and from a file alone.</summary>
public sealed class WeekCommandLawTests : IDisposable
{
    private static readonly WeekProblem Two = new(
        [new("one", [new(0, 480)], null), new("two", [new(0, 480)], null)],
        [Run("a", 300), Run("b", 200)], new(), [], [], [], []);

    private readonly CliShop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task A_planned_run_is_put_at_a_time_and_let_go_again()
    {
        shop.Put("T-1", (CliShop.Board("T-1-1", "a.pdf"), CliShop.Pdf()));
        await DoneAsync("orders");
        await DoneAsync("plan");
        JsonElement run = (await DoneAsync("week")).GetProperty("runs")[0];
        string id = run.GetProperty("runId").GetString()!, at = Invariant($"{run.GetProperty("start").GetDateTimeOffset().Date.AddDays(1):yyyy-MM-dd}T11:00");
        JsonElement put = (await DoneAsync("week", "put", id, "--at", at)).GetProperty("runs")[0];
        Assert.Equal((true, at), (put.GetProperty("pinned").GetBoolean(), Invariant($"{put.GetProperty("start").GetDateTimeOffset():yyyy-MM-dd}T{put.GetProperty("start").GetDateTimeOffset():HH:mm}")));

        // Upkeep takes the ink when the week prints it, and the set-up adds up to what it says.
        DateTimeOffset used = (await DoneAsync("upkeep", "--press", put.GetProperty("pressId").GetString()!)).GetProperty("uses")[0].GetProperty("start").GetDateTimeOffset();
        Assert.Equal(put.GetProperty("start").GetDateTimeOffset().Date, used.Date);
        int[] parts = [.. put.GetProperty("setUpBecause").GetString()!.Split(';')[0].Split(" + ").Select(w => int.Parse(w[(w.LastIndexOf(' ') + 1)..], System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(put.GetProperty("setUpMinutes").GetInt32(), parts.Sum());
        Assert.False((await DoneAsync("week", "let", id)).GetProperty("runs")[0].GetProperty("pinned").GetBoolean());
        Assert.Equal(3, (await shop.AskAsync("week", "let", id)).Code);
        Assert.Equal(3, (await shop.AskAsync("week", "lock", id)).Code);
        Assert.Equal(3, (await shop.AskAsync("week", "put", id, "--at", "2001-01-01T10:00")).Code);
    }

    [Fact]
    public async Task A_week_of_a_file_alone_uses_both_presses_and_faults_name_file_and_field()
    {
        string file = Path.Combine(shop.Folder, "week.json");
        await File.WriteAllBytesAsync(file, LaydownJson.ToBytes(Two));
        JsonElement places = (await DoneAsync("week", "--file", file)).GetProperty("plan").GetProperty("places");
        Assert.Equal(["one", "two"], places.EnumerateArray().Select(p => p.GetProperty("pressId").GetString()!).Order(StringComparer.Ordinal));

        await File.WriteAllBytesAsync(file, LaydownJson.ToBytes(Two with { Orders = [["a", "c"]] }));
        (int code, JsonElement answer) = await shop.AskAsync("week", "--file", file);
        Assert.Equal((3, "week.json", "Locked order"), (code, answer.GetProperty("faults")[0].GetProperty("file").GetString(), answer.GetProperty("faults")[0].GetProperty("field").GetString()));
        await File.WriteAllBytesAsync(file, LaydownJson.ToBytes(Two with { Presses = [new("one", [new(480, 0)], null)] }));
        Assert.Equal(3, (await shop.AskAsync("week", "--file", file)).Code);
    }

    [Fact]
    public async Task A_file_tells_of_benches_and_care_and_a_bench_that_is_not_there_is_refused_by_name()
    {
        string file = Path.Combine(shop.Folder, "week.json");
        WeekProblem benches = Two with
        {
            Presses = [Two.Presses[0] with { Care = [new("check", "Check", 5, 1440, -2000)] }, Two.Presses[1]],
            Runs = [.. Two.Runs.Select(r => r with { Steps = [new("cut", 60, false, "saw")] })],
            Benches = [new("saw", [[new(0, 600)]], "Saw")],
        };
        await File.WriteAllBytesAsync(file, LaydownJson.ToBytes(benches));
        JsonElement plan = (await DoneAsync("week", "--file", file)).GetProperty("plan");
        int[][] visits = [.. plan.GetProperty("visits").EnumerateArray().Select(v => new[] { v.GetProperty("start").GetInt32(), v.GetProperty("end").GetInt32() })];
        Assert.Equal([60, 60], visits.Select(v => v[1] - v[0]));
        Assert.True(visits[0][1] <= visits[1][0]);
        Assert.Equal("Check", Assert.Single(plan.GetProperty("care").EnumerateArray()).GetProperty("what").GetString());

        await File.WriteAllBytesAsync(file, LaydownJson.ToBytes(benches with { Benches = [] }));
        (int code, JsonElement answer) = await shop.AskAsync("week", "--file", file);
        JsonElement fault = answer.GetProperty("faults")[0];
        Assert.Equal((3, "week.json", "Run a, step cut", "bench saw, which is not in the plan"), (code, fault.GetProperty("file").GetString(), fault.GetProperty("field").GetString(), fault.GetProperty("found").GetString()));
    }

    private static WeekRun Run(string id, int due) =>
        new(id, new Dictionary<string, int> { ["one"] = 150, ["two"] = 150 }, new("board", false, 3, "colour", false, "fine", "A"), 0, due, 1, []);

    private async Task<JsonElement> DoneAsync(params string[] words)
    {
        (int code, JsonElement answer) = await shop.AskAsync(words);
        Assert.True(code == 0, answer.ToString());
        return answer;
    }
}
