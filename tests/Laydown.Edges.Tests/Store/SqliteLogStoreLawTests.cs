using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop.Log;
using Laydown.Store;

namespace Laydown.Edges.Tests.Store;

public sealed class SqliteLogStoreLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task An_entry_comes_back_with_every_field_and_a_number_of_its_own()
    {
        SqliteLogStore log = await OpenAsync();
        RunActual actual = new("R-1", At(0), At(40), 9, 1, "p", "m", "s", new(2026, 11, 26), 40, 38, 12.5, 13, 3, 2);
        LogEntry told = new(0, At(40), LogKind.Stop, "R-1", "p", "Ada", "smooth", Stop: new(9, 1, 10, Done: true, 12.5), Actual: actual);
        Reading<LogEntry> kept = await log.AppendAsync(told, _ => Reading.Of(told), None);
        Assert.Equal(told with { Number = 1 }, kept.Value);
        Assert.Equal(told with { Number = 1 }, Assert.Single(await (await OpenAsync()).OfRunAsync("R-1", None)));
        Assert.Equal(actual, Assert.Single(await log.ActualsAsync(new(), 10, None)));
    }

    [Fact]
    public async Task A_refused_entry_leaves_nothing()
    {
        SqliteLogStore log = await OpenAsync();
        LogEntry told = Note(0, "R-1", 0);
        Reading<LogEntry> refused = await log.AppendAsync(told, _ => Reading.Refused<LogEntry>(new InputFault("log", null, "/at", "x", "y")), None);
        Assert.False(refused.IsTaken);
        Assert.Equal(0, (await log.PageAsync(new(), None)).All);
    }

    [Fact]
    public async Task Pages_one_after_the_other_hold_every_entry_once_latest_first()
    {
        SqliteLogStore log = await OpenAsync();

        // Many of the same second, told out of order.
        List<LogEntry> told = [.. Enumerable.Range(0, 97).Select(i => Note(0, Invariant($"R-{i % 5}"), i * 37 % 11, i % 3 == 0 ? "p" : "q"))];
        await log.AppendAllAsync(told, None);
        List<LogEntry> all = [];
        LogWish wish = new(Rows: 10);
        for (LogCursor? after = null; all.Count == 0 || after is not null;)
        {
            LogPage page = await log.PageAsync(wish with { After = after }, None);
            Assert.Equal(97, page.All);
            all.AddRange(page.Entries);
            after = page.Next is null ? null : LogCursor.Read(page.Next.ToString());
        }

        Assert.Equal(97, all.Select(e => e.Number).Distinct().Count());
        Assert.Equal(all.OrderByDescending(e => e.At).ThenByDescending(e => e.Number), all);
        LogPage some = await log.PageAsync(new(LogKind.Note, "R-2", new("p", At(3), At(8))), None);
        Assert.Equal(told.Where(e => e.RunId == "R-2" && e.PressId == "p" && e.At >= At(3) && e.At < At(8)).Count(), some.All);
        Assert.Equal(some.All, some.Entries.Count);
    }

    [Fact]
    public async Task A_struck_entry_stays_and_counts_no_more()
    {
        SqliteLogStore log = await OpenAsync();
        await log.AppendAllAsync([Note(0, "R-1", 0) with { Kind = LogKind.Start }, Note(0, "R-1", 1)], None);
        LogEntry strike = new(0, At(2), LogKind.Strike, "R-1", "p", Note: "wrong", Strikes: 1);
        LogBefore? seen = null;
        await log.AppendAsync(strike, before => Reading.Of(Seen(before)), None);
        Assert.Equal((1L, 2), (seen!.Struck!.Number, seen.OfRun.Count));
        Assert.Equal([true, false, false], (await log.OfRunAsync("R-1", None)).Select(e => e.Struck));
        Assert.Empty(await log.LastAsync(LogKind.Start, new(), 10, None));
        await log.AppendAsync(strike, before => Reading.Of(Seen(before)), None);
        Assert.Null(seen.Struck);

        LogEntry Seen(LogBefore before)
        {
            seen = before;
            return strike;
        }
    }

    [Fact]
    public async Task Turns_of_other_runs_on_the_press_that_reach_past_an_entry_are_told_to_its_judge()
    {
        SqliteLogStore log = await OpenAsync();
        await log.AppendAllAsync(
            [
                Turn("R-1", 0, false), Turn("R-1", 10, true), Turn("R-2", 20, false), Turn("R-2", 30, true), Turn("R-1", 30, false), Turn("R-1", 50, true),
                Turn("R-3", 5, false, "q"), Turn("R-3", 60, true, "q"), Turn("R-4", 55, false), Turn("R-5", 12, false), Turn("R-5", 18, true),
            ],
            None);
        Assert.Equal(["R-1 8:30-8:50", "R-4 8:55-"], await OthersAsync(Turn("R-6", 40, false)));
        Assert.Equal(["R-1 8:30-8:50", "R-4 8:55-"], await OthersAsync(Turn("R-2", 40, false)));
        Assert.Equal(["R-5 8:12-8:18", "R-2 8:20-8:30", "R-4 8:55-"], await OthersAsync(Turn("R-1", 12, false)));
        Assert.Equal(["R-4 8:55-"], await OthersAsync(Turn("R-6", 50, false)));

        // A stop looks back to its start; other entries start and stop nothing.
        Assert.Equal(["R-1 8:30-8:50"], await OthersAsync(Turn("R-4", 70, true) with { At = At(70) }, startedAt: 45));
        Assert.Empty(await OthersAsync(Note(0, "R-6", 0)));
        Assert.Equal(["R-1 8:0-8:10", "R-1 8:30-8:50"], (await log.TurnsAsync(["R-1"], None)).Select(Words));

        async Task<IReadOnlyList<string>> OthersAsync(LogEntry entry, int? startedAt = null)
        {
            if (startedAt is { } at)
                await log.AppendAllAsync([Turn(entry.RunId!, at, true), Turn(entry.RunId!, at, false)], None);
            IReadOnlyList<RunTurn> seen = [];
            await log.AppendAsync(entry, before => Seen(before), None);
            return [.. seen.Select(Words)];

            Reading<LogEntry> Seen(LogBefore before)
            {
                seen = before.OthersOnPress;
                return Reading.Refused<LogEntry>(new InputFault("log", null, "/kind", "a look", "nothing kept"));
            }
        }

        static string Words(RunTurn turn) => Invariant($"{turn.RunId} {turn.Start:H:m}-{turn.Stop:H:m}");
    }

    private static LogEntry Turn(string run, int minutes, bool stops, string press = "p") =>
        new(0, At(minutes), stops ? LogKind.Stop : LogKind.Start, run, press, Stop: stops ? new(1, 0, null, Done: false) : null);

    [Fact]
    public async Task Of_many_that_start_a_run_at_once_one_does()
    {
        SqliteLogStore log = await OpenAsync();
        LogEntry start = Note(0, "R-1", 0) with { Kind = LogKind.Start };
        Reading<LogEntry>[] answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => log.AppendAsync(
            start, before => before.LastOfRun is null ? Reading.Of(start) : Reading.Refused<LogEntry>(new InputFault("log", null, "/kind", "running", "standing")), None))));
        Assert.Single(answers, a => a.IsTaken);
        Assert.Equal(1, (await log.PageAsync(new(), None)).All);
    }

    private static DateTimeOffset At(int minutes) => new DateTimeOffset(2026, 11, 26, 8, 0, 0, TimeSpan.FromHours(1)).AddMinutes(minutes);

    private static LogEntry Note(long number, string run, int minutes, string press = "p") => new(number, At(minutes), LogKind.Note, run, press, Note: "n");

    private async Task<SqliteLogStore> OpenAsync()
    {
        string file = Path.Combine(folder.Path, "shop.db");
        await new SqliteShopStore(file).OpenAsync(None);
        return new(file);
    }
}
