using System.Text.Json;
using Laydown.Measures;
using Laydown.Plan.Drawings;
using Laydown.Plan.Log;
using Laydown.Plan.Upkeep;
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
/// <param name="press">Plans runs anew for other presses; null where nobody does.</param>
/// <param name="care">What was read and done at the presses; null where nobody writes it down.</param>
/// <param name="levels">Knows levels that the log holds, too; null where the book alone tells them.</param>
public sealed class PlanWeek(ShopFolder folder, Catalogue catalogue, IShopStore store, ILogStore? log, TimeProvider clock, TakePress? press = null, IPressCareBook? care = null, TankLevels? levels = null)
{
    private const int MostRuns = 2000;
    private static readonly SemaphoreSlim OneAtATime = new(1, 1);

    /// <summary>Moves tried when the week is planned, 0 or more; as many as suit a drag where nobody says.</summary>
    public long Iterations { get; init; } = WeekPlanner.UsualIterations;

    private string File => Path.Combine(Path.GetDirectoryName(folder.StoreFile)!, "week.json");

    /// <summary>Plans anew from the plan kept last and keeps the new one.</summary>
    /// <returns>The week, or why there is none: no calendar, a run without its press.</returns>
    public Task<Reading<WeekView>> PlanAsync(CancellationToken cancellation) =>
        KeepAsync((book, _) => Reading.Of(book), Iterations, cancellation);

    /// <summary>The week as it was planned last: nothing is searched and nothing kept; runs that came since stand where they cost least.</summary>
    /// <returns>The week, or why there is none.</returns>
    public Task<Reading<WeekView>> ShowAsync(CancellationToken cancellation) =>
        InTurnAsync((book, _) => Reading.Of(book), s => Task.FromResult(View(s, s.Desk.Solve(0, cancellation))), cancellation);

    /// <summary>Runs and care of one press as the week stands, for its upkeep: nothing is searched and nothing kept.</summary>
    /// <param name="pressId">A press of the shop.</param>
    /// <param name="from">Start of the time looked at.</param>
    /// <param name="cancellation">Ends the work.</param>
    public Task<Reading<WeekPressUse>> OnPressAsync(string pressId, DateTimeOffset from, CancellationToken cancellation) => InTurnAsync((book, _) => Reading.Of(book), s =>
        Task.FromResult(WeekUpkeep.Of(s.Desk, s.Desk.Solve(0, cancellation), catalogue.Presses.First(p => p.Id == pressId), s.Runs)), cancellation, from);

    /// <summary>Puts a run at a time: it is not begun before, and as soon after as can be.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="local">When, by the shop's clock.</param>
    /// <param name="cancellation">Stops before anything is changed.</param>
    public Task<Reading<WeekView>> PinAsync(string runId, DateTime local, CancellationToken cancellation) =>
        ChangeAsync((book, desk) => Pinned(book, desk, runId, local), cancellation);

    /// <summary>What putting a run at a time would make of the week: searched as <see cref="PinAsync"/> does, and nothing kept.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="local">When, by the shop's clock.</param>
    /// <param name="cancellation">Ends the search.</param>
    public Task<Reading<WeekTrial>> TryPinAsync(string runId, DateTime local, CancellationToken cancellation) =>
        InTurnAsync((book, desk) => Pinned(book, desk, runId, local), s =>
        {
            WeekPlan now = s.Before.Solve(0, cancellation), then = s.Desk.Solve(Iterations, cancellation);
            cancellation.ThrowIfCancellationRequested();
            return Task.FromResult(Trial(s.Desk, runId, now, then));
        }, cancellation);

    /// <summary>Lets a run go where planning puts it.</summary>
    public Task<Reading<WeekView>> UnpinAsync(string runId, CancellationToken cancellation) => ChangeAsync((book, _) => book.Pins.Any(p => p.RunId == runId)
        ? Reading.Of(book with { Pins = [.. book.Pins.Where(p => p.RunId != runId)] })
        : Reading.Refused<WeekBook>(RunFaults.Of(runId, "pin", "a run that was not put at a time", "one that was")), cancellation);

    /// <summary>Locks the order of runs: on one press none comes before one named earlier.</summary>
    public Task<Reading<WeekView>> LockAsync(IReadOnlyList<string> runIds, CancellationToken cancellation) => ChangeAsync((book, desk) =>
        runIds.Count < 2 || runIds.Distinct(StringComparer.Ordinal).Count() < runIds.Count
            ? Reading.Refused<WeekBook>(RunFaults.Of(string.Join(", ", runIds), "runs", Invariant($"{runIds.Count} runs, or one twice"), "two different runs or more"))
            : runIds.Select(r => Missing(desk, r)).OfType<InputFault>().ToArray() is { Length: > 0 } missing
            ? Reading.Refused<WeekBook>([.. missing])
            : Reading.Of(book with { Orders = [.. book.Orders.Where(o => !o.Intersect(runIds).Any()), [.. runIds]] }), cancellation);

    /// <summary>Takes every lock off that names a run.</summary>
    public Task<Reading<WeekView>> UnlockAsync(string runId, CancellationToken cancellation) => ChangeAsync((book, _) => book.Orders.Any(o => o.Contains(runId))
        ? Reading.Of(book with { Orders = [.. book.Orders.Where(o => !o.Contains(runId))] })
        : Reading.Refused<WeekBook>(RunFaults.Of(runId, "order", "a run without a locked order", "one that has one")), cancellation);

    /// <summary>Takes a plan made from scratch in place of the one that stands, where it costs less; it can be taken back.</summary>
    /// <param name="cancellation">Stops before anything is changed.</param>
    /// <returns>The week, or why it stays as it is: no plan from scratch costs as much less as is worth telling.</returns>
    public async Task<Reading<WeekView>> AfreshAsync(CancellationToken cancellation) => (await InTurnAsync(
        (book, _) => Reading.Of(book with { Before = book with { Before = null, Moved = null }, Moved = null }),
        async s =>
        {
            WeekPlan plan = s.Desk.Solve(Iterations, cancellation);
            return (plan.MadeAfresh ? plan : plan.Afresh) is { } afresh
                ? Reading.Of(await KeptAsync(s, afresh, cancellation))
                : Reading.Refused<WeekView>(new InputFault("week", null, "afresh", "a plan that none from scratch betters by 1 %", "one that is bettered"));
        }, cancellation)).Then(w => w);

    /// <summary>Takes the last change by hand back: runs stand as they stood before it, one that was put on another press is planned as it was on its own.</summary>
    /// <param name="cancellation">Stops before anything is changed.</param>
    public async Task<Reading<WeekView>> BackAsync(CancellationToken cancellation)
    {
        Reading<WeekBook> last = Read();
        if (!last.IsTaken)
            return Reading.Refused<WeekView>(last.Faults);
        if (last.Value is { Before: not null, Moved: { } move } && press is not null && await press.BackAsync(move, cancellation) is { IsTaken: false } stays)
            return Reading.Refused<WeekView>(stays.Faults);

        // Where a press was taken back, what follows is not cut off.
        return await KeepAsync((book, _) => book.Before is { } before
            ? Reading.Of(before)
            : Reading.Refused<WeekBook>(new InputFault("week", null, "change", "none", "a run put, let go, locked, unlocked or put on another press before")),
            0, last.Value.Moved is null ? cancellation : CancellationToken.None);
    }

    /// <summary>The week with, for every late run, what other presses would make of it: each planned anew for that press and tried on this plan.</summary>
    /// <param name="week">The week as planned or shown.</param>
    /// <param name="progress">Told each press that was tried; null where nobody looks.</param>
    /// <param name="cancellation">Ends the work.</param>
    public async Task<Reading<WeekView>> WithPressesAsync(WeekView week, IProgress<WeekTrying>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(week);
        List<WeekRunView> runs = [.. week.Runs];
        int late = runs.Count(r => r.Why is not null), told = 0;
        for (int i = 0; i < runs.Count; i++)
        {
            if (runs[i].Why is not { } why)
                continue;
            progress?.Report(new(why.RunId, null, told++, late));
            Reading<IReadOnlyList<WeekElsewhere>> elsewhere = await ElsewhereAsync(why.RunId, null, cancellation);
            if (!elsewhere.IsTaken)
                return Reading.Refused<WeekView>(elsewhere.Faults);
            IEnumerable<WeekRemedy> presses = elsewhere.Value.Select(e => e.Offer?.There).OfType<WeekRemedy>().Where(r => r.LateThen < why.Late);
            runs[i] = runs[i] with { Why = why with { Remedies = [.. why.Remedies.Concat(presses).OrderBy(r => r.LateThen).ThenBy(r => r.OthersLater)] } };
        }

        return Reading.Of(week with { Runs = runs });
    }

    /// <summary>A run on every other press: planned anew for it and tried on the plan as it stands, or refused in words. Nothing is changed.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="progress">Told each press before it is tried; null where nobody looks.</param>
    /// <param name="cancellation">Ends the work.</param>
    public async Task<Reading<IReadOnlyList<WeekElsewhere>>> ElsewhereAsync(string runId, IProgress<WeekTrying>? progress, CancellationToken cancellation)
    {
        if (press is null || await store.RunAsync(runId, cancellation) is not { } record)
            return Reading.Refused<IReadOnlyList<WeekElsewhere>>(RunFaults.Of(runId, "id", "no run of that id", "a planned run"));
        List<(string PressId, Reading<Laydown.Plan.Runs.Run> Run)> tried = [];
        IReadOnlyList<Laydown.Press.Machines.PressDescription> others = press.Others(record);
        foreach (Laydown.Press.Machines.PressDescription other in others)
        {
            progress?.Report(new(runId, other.Id, tried.Count, others.Count));
            tried.Add((other.Id, await press.TryAsync(runId, other.Id, cancellation)));
        }

        return await InTurnAsync((book, desk) => Missing(desk, runId) is { } missing ? Reading.Refused<WeekBook>(missing) : Reading.Of(book), s =>
        {
            WeekPlan plan = s.Desk.Solve(0, cancellation);
            return Task.FromResult<IReadOnlyList<WeekElsewhere>>([.. tried.Select(t => new WeekElsewhere(
                runId, t.PressId, t.Run.IsTaken ? Offer(s.Desk, plan, record.Run, t.Run.Value) : null, t.Run.Faults))]);
        }, cancellation);
    }

    /// <summary>Puts a run on another press, planned anew for it, and where wanted at a time; the others are planned around it.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="pressId">The press.</param>
    /// <param name="by">Who puts it there.</param>
    /// <param name="reason">Why; stays with the run.</param>
    /// <param name="local">When it is to begin, by the shop's clock; null to leave that to planning.</param>
    /// <param name="cancellation">Stops before anything is changed.</param>
    /// <returns>The week, or why not; then nothing was changed.</returns>
    public async Task<Reading<WeekView>> PutOnPressAsync(string runId, string pressId, string by, string reason, DateTime? local, CancellationToken cancellation)
    {
        if (press is null)
            return Reading.Refused<WeekView>(RunFaults.Of(runId, "press", pressId, "a shop that plans runs anew"));
        Reading<WeekBook> able = await InTurnAsync(
            (book, desk) => local is { } time ? Open(desk, runId, pressId, desk.At(time)).Then(_ => Reading.Of(book)) : Reading.Of(book), s => Task.FromResult(s.Book), cancellation);
        if (!able.IsTaken)
            return Reading.Refused<WeekView>(able.Faults);
        Reading<(RunRecord Now, PressMove Move)> taken = await press.MoveAsync(runId, pressId, by, reason, cancellation);
        if (!taken.IsTaken)
            return Reading.Refused<WeekView>(taken.Faults);

        // The press is taken: what follows is not cut off.
        return await KeepAsync((book, desk) =>
        {
            WeekBook without = book with { Pins = [.. book.Pins.Where(p => p.RunId != runId)], Stood = [.. book.Stood.Where(s => s.RunId != runId)], Before = book with { Before = null, Moved = null }, Moved = taken.Value.Move };
            return local is { } at ? Pinned(without, desk, runId, at) : Reading.Of(without);
        }, Iterations, CancellationToken.None);
    }

    private WeekOffer Offer(WeekDesk desk, WeekPlan plan, Laydown.Plan.Runs.Run now, Laydown.Plan.Runs.Run there)
    {
        WeekRemedy place = WeekReasons.Elsewhere(desk.Problem, plan, desk.RunOf(there));
        Money more = there.Cost.Cost - now.Cost.Cost;
        string money = more.Cents == 0 ? "for the same money" : Invariant($"{new Money(Math.Abs(more.Cents))} {catalogue.Rates.Currency} {(more.Cents > 0 ? "more" : "less")}");
        return new(
            there.Mode.ModeId, there.Time.PrintMinutes + there.Time.HandlingMinutes, now.Time.PrintMinutes + now.Time.HandlingMinutes, there.SheetCount, now.SheetCount,
            there.Cost.Cost, now.Cost.Cost, plan.Places.First(p => p.RunId == now.Id).Late,
            place with { What = Invariant($"{place.What.TrimEnd('.')}, planned anew for that press, {money}."), Cents = (int)Math.Clamp(more.Cents, int.MinValue, int.MaxValue) });
    }

    private Task<Reading<WeekView>> ChangeAsync(Func<WeekBook, WeekDesk, Reading<WeekBook>> change, CancellationToken cancellation) =>
        KeepAsync((book, desk) => change(book, desk).Then(b => Reading.Of(b with { Before = book with { Before = null, Moved = null }, Moved = null })), Iterations, cancellation);

    private Task<Reading<WeekView>> KeepAsync(Func<WeekBook, WeekDesk, Reading<WeekBook>> change, long iterations, CancellationToken cancellation) => InTurnAsync(change, async s =>
    {
        WeekPlan plan = s.Desk.Solve(iterations, cancellation);
        return await KeptAsync(s, plan, cancellation);
    }, cancellation);

    private async Task<WeekView> KeptAsync(Sitting s, WeekPlan plan, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        WeekBook kept = s.Book with { Stood = [.. plan.Places.Select(p => new WeekStood(p.RunId, p.PressId, s.Desk.InstantOf(p.Start)))] };
        await WholeFile.WriteAsync(File, JsonSerializer.SerializeToUtf8Bytes(kept, ShopJson.Readable), CancellationToken.None);
        return View(s with { Book = kept }, plan);
    }

    private async Task<Reading<T>> InTurnAsync<T>(
        Func<WeekBook, WeekDesk, Reading<WeekBook>> change, Func<Sitting, Task<T>> then, CancellationToken cancellation, DateTimeOffset? from = null)
    {
        if (catalogue.Calendar is not { } calendar)
            return Reading.Refused<T>(new InputFault("calendar.json", null, "file", "no such file", "the shifts and holidays of the shop"));
        await OneAtATime.WaitAsync(cancellation);
        try
        {
            DateTimeOffset now = from ?? clock.GetUtcNow();
            (IReadOnlyList<Laydown.Plan.Runs.Run> runs, IReadOnlyList<(Laydown.Plan.Runs.Run, DateTimeOffset)> printed) = await RunsAsync(now, cancellation);
            if (runs.FirstOrDefault(r => catalogue.Presses.All(p => p.Id != r.PressId)) is { } lost)
                return Reading.Refused<T>(RunFaults.Of(lost.Id, "press", lost.PressId, "a press the shop still has"));
            Reading<WeekBook> book = Read();
            if (!book.IsTaken)
                return Reading.Refused<T>(book.Faults);
            IReadOnlyDictionary<string, PressState> states = await StatesAsync(now, cancellation);
            WeekDesk before = new(catalogue, calendar, runs, printed, book.Value, now, states);
            Reading<WeekBook> changed = change(book.Value, before);
            return changed.IsTaken
                ? Reading.Of(await then(new(before, new(catalogue, calendar, runs, printed, changed.Value, now, states), changed.Value, runs, printed)))
                : Reading.Refused<T>(changed.Faults);
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    private static Reading<WeekBook> Pinned(WeekBook book, WeekDesk desk, string runId, DateTime local)
    {
        DateTimeOffset at = desk.At(local);
        if (Missing(desk, runId) is { } missing)
            return Reading.Refused<WeekBook>(missing);
        return Open(desk, runId, desk.Problem.Runs.First(r => r.Id == runId).Minutes.Keys.First(), at).Then(_ => Reading.Of(
            book with { Pins = [.. book.Pins.Where(p => p.RunId != runId), new(runId, at)], Stood = [.. book.Stood.Where(s => s.RunId != runId)] }));
    }

    private static Reading<DateTimeOffset> Open(WeekDesk desk, string runId, string pressId, DateTimeOffset at) =>
        at < desk.From || at > desk.Until
            ? Reading.Refused<DateTimeOffset>(RunFaults.Of(runId, "at", Invariant($"{at:yyyy-MM-dd HH:mm}"), Invariant($"a time from {desk.From:yyyy-MM-dd HH:mm} to {desk.Until:yyyy-MM-dd}")))
            : desk.IsOpen(pressId, at)
            ? Reading.Of(at)
            : Reading.Refused<DateTimeOffset>(RunFaults.Of(runId, "at", Invariant($"{at:yyyy-MM-dd HH:mm}, when {pressId} is not worked"), "a time within a shift of calendar.json"));

    private static WeekTrial Trial(WeekDesk desk, string runId, WeekPlan now, WeekPlan then)
    {
        WeekPlace own = then.Places.First(p => p.RunId == runId);
        Dictionary<string, int> late = now.Places.ToDictionary(p => p.RunId, p => p.Late, StringComparer.Ordinal);
        IReadOnlyList<WeekLater> others = [.. then.Places.Where(p => p.RunId != runId).Select(p => new WeekLater(p.RunId, p.Late, late.GetValueOrDefault(p.RunId)))];
        return new(
            runId, desk.InstantOf(own.SetUpStart), desk.InstantOf(own.Start), desk.InstantOf(own.End), desk.InstantOf(own.Ready), own.Late,
            [.. others.Where(o => o.LateMinutes > o.LateNow).OrderByDescending(o => o.LateMinutes - o.LateNow).ThenBy(o => o.RunId, StringComparer.Ordinal)],
            others.Count(o => o.LateMinutes < o.LateNow), then.LateRuns, now.LateRuns);
    }

    // Runs that the log says are done wait no more; those done lately may still be at a bench.
    private async Task<(IReadOnlyList<Laydown.Plan.Runs.Run> Waiting, IReadOnlyList<(Laydown.Plan.Runs.Run Run, DateTimeOffset Ended)> Printed)> RunsAsync(
        DateTimeOffset now, CancellationToken cancellation)
    {
        DateTimeOffset lately = now.AddDays(-WeekDesk.PrintedDays);
        IReadOnlyList<RunActual> actuals = log is null ? [] : await log.ActualsAsync(new LogSpan(From: now.AddDays(-120)), 20_000, cancellation);
        Dictionary<string, DateTimeOffset> done = actuals.GroupBy(a => a.RunId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(a => a.Ended), StringComparer.Ordinal);
        IReadOnlyList<Laydown.Plan.Runs.Run> all = await WaitingRuns.OfAsync(store, cancellation);
        return ([.. all.Where(r => !done.ContainsKey(r.Id)).Take(MostRuns)],
            [.. all.Where(r => done.TryGetValue(r.Id, out DateTimeOffset ended) && ended > lately).Take(MostRuns).Select(r => (r, done[r.Id]))]);
    }

    // Care counts where the description of a press names some, or somebody wrote down what was done there.
    private async Task<IReadOnlyDictionary<string, PressState>> StatesAsync(DateTimeOffset now, CancellationToken cancellation)
    {
        Dictionary<string, PressState> states = new(StringComparer.Ordinal);
        IReadOnlyList<RunActual> printed = log is null ? [] : await log.ActualsAsync(new LogSpan(From: now.AddDays(-120)), 20_000, cancellation);
        foreach (Laydown.Press.Machines.PressDescription one in catalogue.Presses)
        {
            PressCarePage? page = care is null ? null : await care.ReadAsync(one.Id, cancellation);
            if (one.Care is not null || page is not null)
                states[one.Id] = await PressStates.OfAsync(one, page?.State, printed, now, levels, cancellation);
        }

        return states;
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

    private WeekView View(Sitting sitting, WeekPlan plan)
    {
        WeekDesk desk = sitting.Desk;
        Dictionary<string, WeekWhy> why = WeekReasons.Of(desk.Problem, plan).ToDictionary(w => w.RunId, StringComparer.Ordinal);
        Dictionary<string, Laydown.Plan.Runs.Run> byId = sitting.Runs.ToDictionary(r => r.Id, StringComparer.Ordinal);
        HashSet<string> held = [.. desk.Problem.Holds.Select(h => h.RunId)], frozen = [.. desk.Problem.Frozen.Select(h => h.RunId)];
        IReadOnlyList<WeekRunView> views = [.. plan.Places.Select(p => new WeekRunView(
            p.RunId, string.Join(", ", byId[p.RunId].Items.Select(i => i.Title).Distinct(StringComparer.Ordinal)), p.PressId, desk.InstantOf(p.SetUpStart), p.SetUpMinutes,
            desk.InstantOf(p.Start), desk.InstantOf(p.End), desk.InstantOf(p.Ready), byId[p.RunId].Due, p.Late,
            held.Contains(p.RunId), frozen.Contains(p.RunId), why.GetValueOrDefault(p.RunId), p.SetUpBecause)
        { TimeWords = byId[p.RunId].Time.LearntWords, CrewWords = desk.CrewWords(byId[p.RunId], p) })];
        Dictionary<string, string> names = catalogue.Presses.ToDictionary(p => p.Id, p => p.Name, StringComparer.Ordinal);
        WeekChart chart = new(desk.Problem.Presses, plan, scale => WeekDrawing.Draw(desk.Problem.Presses, names, plan, desk.Days(), held, scale, desk.Problem.Benches), desk.InstantOf);
        return new WeekView(desk.From, views, sitting.Book.Orders, plan.SetUpMinutes, plan.LateRuns, chart, sitting.Book.Before is not null,
            desk.Maintenance(desk.InstantOf(Math.Max(7 * 1440, plan.Places.Select(p => p.End).DefaultIfEmpty(0).Max()))))
        {
            Benches = WeekBenches.Of(desk, plan),
            Care = [.. plan.Care.Select(b => new WeekCareView(b.PressId, b.What, desk.InstantOf(b.Start), desk.InstantOf(b.End), b.RunId, b.CareId))],
            Afresh = WeekAfresh.Of(plan),
            Stops = [.. plan.Stops.Select(s => new WeekStopView(s.PressId, desk.InstantOf(s.Start), desk.InstantOf(s.End), [.. s.Ways.Select(w => new WeekStopCost(w.Name, new Money(w.Cents), w.ShortRuns))]))],
            Printed = [.. plan.Printed.Where(p => p.Ready > 0).Select(p => Printed(desk, p, sitting.Printed.First(r => r.Run.Id == p.RunId)))],
            BackWords = sitting.Book is { Before: not null, Moved.Before.Run: { } moved }
                ? Invariant($"{moved.Id} goes back to {names.GetValueOrDefault(moved.PressId, moved.PressId)} as it was planned there; press files made since go.") : null,
        };
    }

    private static WeekPrintedView Printed(WeekDesk desk, WeekReady ready, (Laydown.Plan.Runs.Run Run, DateTimeOffset Ended) printed) => new(
        ready.RunId, string.Join(", ", printed.Run.Items.Select(i => i.Title).Distinct(StringComparer.Ordinal)), desk.InstantOf(desk.MinuteOf(printed.Ended)), desk.InstantOf(ready.Ready),
        printed.Run.Due, ready.Late);

    private static InputFault? Missing(WeekDesk desk, string runId) => desk.Problem.Runs.Any(r => r.Id == runId)
        ? null
        : RunFaults.Of(runId, "id", "no run of that id that waits", desk.Problem.Runs.Count == 0 ? "a planned run" : "one of " + string.Join(", ", desk.Problem.Runs.Take(12).Select(r => r.Id)));

    // One change: the week before it, the week with it, what is kept of it, and the runs.
    private sealed record Sitting(WeekDesk Before, WeekDesk Desk, WeekBook Book, IReadOnlyList<Laydown.Plan.Runs.Run> Runs, IReadOnlyList<(Laydown.Plan.Runs.Run Run, DateTimeOffset Ended)> Printed);
}
