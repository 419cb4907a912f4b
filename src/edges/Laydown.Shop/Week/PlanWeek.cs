using System.Text.Json;
using Laydown.Layout.Search;
using Laydown.Measures;
using Laydown.Plan.Drawings;
using Laydown.Plan.Week;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;
using Laydown.Shop.Run;

namespace Laydown.Shop.Week;

/// <summary>Puts the runs that wait onto presses and shifts, and keeps the plan.</summary>
/// <param name="folder">The shop's folder; the plan is kept in <c>store/week.json</c>.</param>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its runs.</param>
/// <param name="log">What was printed already; null where the shop keeps no log.</param>
/// <param name="clock">Tells what time it is.</param>
public sealed class PlanWeek(ShopFolder folder, Catalogue catalogue, IShopStore store, ILogStore? log, TimeProvider clock)
{
    private const int MostRuns = 2000;
    private static readonly SemaphoreSlim OneAtATime = new(1, 1);

    private string File => Path.Combine(Path.GetDirectoryName(folder.StoreFile)!, "week.json");

    /// <summary>Plans anew from the plan kept last and keeps the new one.</summary>
    /// <returns>The week, or why there is none: no calendar, a run without its press.</returns>
    public Task<Reading<WeekView>> PlanAsync(CancellationToken cancellation) => ChangeAsync((book, _) => Reading.Of(book), cancellation);

    /// <summary>The plan kept last, as it stands, without planning; empty where none is kept or it cannot be read.</summary>
    public IReadOnlyList<WeekStood> Kept() => Read().Match(b => b.Stood, _ => []);

    /// <summary>Puts a run at a time: it is not begun before, and as soon after as can be.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="local">When, by the shop's clock.</param>
    /// <param name="cancellation">Stops before anything is changed.</param>
    public Task<Reading<WeekView>> PinAsync(string runId, DateTime local, CancellationToken cancellation) => ChangeAsync((book, desk) =>
    {
        DateTimeOffset at = desk.At(local);
        if (Missing(desk, runId) is { } missing)
            return Reading.Refused<WeekBook>(missing);
        if (at < desk.From || at > desk.Until)
            return Reading.Refused<WeekBook>(Fault(runId, "at", Invariant($"{at:yyyy-MM-dd HH:mm}"), Invariant($"a time from {desk.From:yyyy-MM-dd HH:mm} to {desk.Until:yyyy-MM-dd}")));
        string press = desk.Problem.Runs.First(r => r.Id == runId).Minutes.Keys.First();
        return desk.IsOpen(press, at)
            ? Reading.Of(book with { Pins = [.. book.Pins.Where(p => p.RunId != runId), new(runId, at)], Stood = [.. book.Stood.Where(s => s.RunId != runId)] })
            : Reading.Refused<WeekBook>(Fault(runId, "at", Invariant($"{at:yyyy-MM-dd HH:mm}, when {press} is not worked"), "a time within a shift of calendar.json"));
    }, cancellation);

    /// <summary>Lets a run go where planning puts it.</summary>
    public Task<Reading<WeekView>> UnpinAsync(string runId, CancellationToken cancellation) => ChangeAsync((book, _) => book.Pins.Any(p => p.RunId == runId)
        ? Reading.Of(book with { Pins = [.. book.Pins.Where(p => p.RunId != runId)] })
        : Reading.Refused<WeekBook>(Fault(runId, "pin", "a run that was not put at a time", "one that was")), cancellation);

    /// <summary>Locks the order of runs: on one press none comes before one named earlier.</summary>
    public Task<Reading<WeekView>> LockAsync(IReadOnlyList<string> runIds, CancellationToken cancellation) => ChangeAsync((book, desk) =>
        runIds.Count < 2 || runIds.Distinct(StringComparer.Ordinal).Count() < runIds.Count
            ? Reading.Refused<WeekBook>(Fault(string.Join(", ", runIds), "runs", Invariant($"{runIds.Count} runs, or one twice"), "two different runs or more"))
            : runIds.Select(r => Missing(desk, r)).OfType<InputFault>().ToArray() is { Length: > 0 } missing
            ? Reading.Refused<WeekBook>([.. missing])
            : Reading.Of(book with { Orders = [.. book.Orders.Where(o => !o.Intersect(runIds).Any()), [.. runIds]] }), cancellation);

    /// <summary>Takes every lock off that names a run.</summary>
    public Task<Reading<WeekView>> UnlockAsync(string runId, CancellationToken cancellation) => ChangeAsync((book, _) => book.Orders.Any(o => o.Contains(runId))
        ? Reading.Of(book with { Orders = [.. book.Orders.Where(o => !o.Contains(runId))] })
        : Reading.Refused<WeekBook>(Fault(runId, "order", "a run without a locked order", "one that has one")), cancellation);

    private async Task<Reading<WeekView>> ChangeAsync(Func<WeekBook, WeekDesk, Reading<WeekBook>> change, CancellationToken cancellation)
    {
        if (catalogue.Calendar is not { } calendar)
            return Reading.Refused<WeekView>(new InputFault("calendar.json", null, "file", "no such file", "the shifts and holidays of the shop"));
        await OneAtATime.WaitAsync(cancellation);
        try
        {
            IReadOnlyList<Laydown.Plan.Runs.Run> runs = await RunsAsync(cancellation);
            if (runs.FirstOrDefault(r => catalogue.Presses.All(p => p.Id != r.PressId)) is { } lost)
                return Reading.Refused<WeekView>(Fault(lost.Id, "press", lost.PressId, "a press the shop still has"));
            Reading<WeekBook> book = Read();
            DateTimeOffset now = clock.GetUtcNow();
            Reading<WeekBook> changed = book.Then(b => change(b, new(catalogue, calendar, runs, b, now)));
            if (!changed.IsTaken)
                return Reading.Refused<WeekView>(changed.Faults);
            WeekDesk desk = new(catalogue, calendar, runs, changed.Value, now);
            WeekPlan plan = WeekPlanner.Solve(desk.Problem, new SearchRules(1, WeekPlanner.UsualIterations), desk.Standing, null, cancellation);
            cancellation.ThrowIfCancellationRequested();
            WeekBook kept = changed.Value with { Stood = [.. plan.Places.Select(p => new WeekStood(p.RunId, p.PressId, desk.InstantOf(p.Start)))] };
            await WholeFile.WriteAsync(File, JsonSerializer.SerializeToUtf8Bytes(kept, ShopJson.Readable), CancellationToken.None);
            return Reading.Of(View(desk, plan, kept, runs));
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    // Runs that the log says are done wait no more.
    private async Task<IReadOnlyList<Laydown.Plan.Runs.Run>> RunsAsync(CancellationToken cancellation)
    {
        HashSet<string> done = log is null ? [] : [.. (await log.ActualsAsync(new LogSpan(From: clock.GetUtcNow().AddDays(-120)), 20_000, cancellation)).Select(a => a.RunId)];
        return [.. (await WaitingRuns.OfAsync(store, cancellation)).Where(r => !done.Contains(r.Id)).Take(MostRuns)];
    }

    private Reading<WeekBook> Read()
    {
        if (!System.IO.File.Exists(File))
            return Reading.Of(WeekBook.Empty);
        try
        {
            return Reading.Of(JsonSerializer.Deserialize<WeekBook>(System.IO.File.ReadAllBytes(File), ShopJson.Readable) ?? WeekBook.Empty);
        }
        catch (Exception failure) when (failure is JsonException or IOException or UnauthorizedAccessException)
        {
            return Reading.Refused<WeekBook>(new InputFault("week.json", null, "file", failure.Message, "the week as the shop keeps it; move the file away to plan without it"));
        }
    }

    private WeekView View(WeekDesk desk, WeekPlan plan, WeekBook book, IReadOnlyList<Laydown.Plan.Runs.Run> runs)
    {
        Dictionary<string, WeekWhy> why = WeekReasons.Of(desk.Problem, plan).ToDictionary(w => w.RunId, StringComparer.Ordinal);
        Dictionary<string, Laydown.Plan.Runs.Run> byId = runs.ToDictionary(r => r.Id, StringComparer.Ordinal);
        IReadOnlyList<WeekRunView> views = [.. plan.Places.Select(p => new WeekRunView(
            p.RunId, string.Join(", ", byId[p.RunId].Items.Select(i => i.Title).Distinct(StringComparer.Ordinal)), p.PressId, desk.InstantOf(p.SetUpStart), p.SetUpMinutes,
            desk.InstantOf(p.Start), desk.InstantOf(p.End), desk.InstantOf(p.Ready), byId[p.RunId].Due, p.Late,
            desk.Problem.Holds.Any(h => h.RunId == p.RunId), desk.Problem.Frozen.Any(h => h.RunId == p.RunId), why.GetValueOrDefault(p.RunId), p.SetUpBecause))];
        string drawing = WeekDrawing.Draw(desk.Problem.Presses, catalogue.Presses.ToDictionary(p => p.Id, p => p.Name, StringComparer.Ordinal), plan, desk.Days());
        return new(desk.From, views, book.Orders, plan.SetUpMinutes, plan.LateRuns, drawing);
    }

    private static InputFault? Missing(WeekDesk desk, string runId) => desk.Problem.Runs.Any(r => r.Id == runId)
        ? null
        : Fault(runId, "id", "no run of that id that waits", desk.Problem.Runs.Count == 0 ? "a planned run" : "one of " + string.Join(", ", desk.Problem.Runs.Take(12).Select(r => r.Id)));

    private static InputFault Fault(string runId, string field, string found, string wanted) => new(Invariant($"run {runId}"), null, field, found, wanted);
}
