using Laydown.Layout.Search;
using Laydown.Plan.Calendar;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Plan.Upkeep;
using Laydown.Plan.Week;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;

namespace Laydown.Shop.Week;

/// <summary>From the shop's runs, presses and calendar to a problem in minutes, and back to its clock.</summary>
internal sealed class WeekDesk
{
    /// <summary>What begins within so many hours is left where it stands; common practice, no source.</summary>
    private const int FrozenHours = 2;

    /// <summary>Runs printed longer ago than this have left their benches; common practice, no source.</summary>
    public const int PrintedDays = 14;

    private readonly Catalogue catalogue;
    private readonly OpenTimes times;
    private readonly IReadOnlyList<Laydown.Plan.Runs.Run> runs;
    private readonly IReadOnlyList<(Laydown.Plan.Runs.Run Run, DateTimeOffset Ended)> printed;
    private readonly IReadOnlyList<WorkBench> benches;
    private readonly Dictionary<string, WeekCareOf> care;
    private readonly WeekBook book;

    public WeekDesk(
        Catalogue catalogue, ShopCalendar calendar, IReadOnlyList<Laydown.Plan.Runs.Run> runs, IReadOnlyList<(Laydown.Plan.Runs.Run Run, DateTimeOffset Ended)> printed,
        WeekBook book, DateTimeOffset now, IReadOnlyDictionary<string, PressState>? states = null)
    {
        (this.catalogue, this.runs, this.printed, this.book) = (catalogue, runs, printed, book);
        benches = calendar.Benches ?? [];
        times = new(calendar);
        DateTimeOffset local = times.At(now);

        // The minute that begins next: what was read a moment ago lies before it.
        From = local.AddTicks((TimeSpan.TicksPerMinute - (local.Ticks % TimeSpan.TicksPerMinute)) % TimeSpan.TicksPerMinute);
        DateOnly last = runs.Select(r => r.Due).Append(DateOnly.FromDateTime(From.Date).AddDays(14)).Max();
        Until = times.At(From.AddDays(Math.Clamp(last.DayNumber - DateOnly.FromDateTime(From.Date).DayNumber + 28, 28, 366)));
        care = catalogue.Presses.ToDictionary(p => p.Id, p => new WeekCareOf(p, states?.GetValueOrDefault(p.Id), From, MinuteOf, PlanUpkeep.InksOf(catalogue, p), catalogue.Rates.LabourPerHour), StringComparer.Ordinal);
        Problem = Make();
    }

    public DateTimeOffset From { get; }

    public DateTimeOffset Until { get; }

    public WeekProblem Problem { get; }

    /// <summary>The plan kept last, as one to begin with; null where none of its runs waits any more.</summary>
    public WeekPlan? Standing => book.Stood.Count == 0 ? null : new([.. book.Stood.OrderBy(s => s.Start)
        .Select(s => new WeekPlace(s.RunId, s.PressId, 0, 0, 0, 0, 0, 0, [], false))], 0, 0, 0);

    /// <summary>Plans from the plan kept last; 0 iterations leave it as it stands.</summary>
    public WeekPlan Solve(long iterations, CancellationToken cancellation) => WeekPlanner.Solve(Problem, new SearchRules(1, iterations), Standing, null, cancellation);

    public int MinuteOf(DateTimeOffset instant) => (int)Math.Clamp(Math.Floor((instant - From).TotalMinutes), int.MinValue / 4, int.MaxValue / 4);

    public DateTimeOffset InstantOf(int minute) => times.At(From.AddMinutes(minute));

    /// <summary>The instant of a time by the shop's clock.</summary>
    public DateTimeOffset At(DateTime local) => times.At(DateOnly.FromDateTime(local), TimeOnly.FromDateTime(local));

    /// <summary>Whether a press is worked at an instant.</summary>
    public bool IsOpen(string pressId, DateTimeOffset instant) => times.Between(instant, instant.AddMinutes(1), pressId).Count > 0;

    public IReadOnlyList<(int Minute, string Name)> Days() => [.. Enumerable.Range(0, (int)Math.Ceiling((Until - From).TotalDays))
        .Select(d => DateOnly.FromDateTime(From.Date).AddDays(d)).Select(d => (Math.Max(0, MinuteOf(times.At(d, TimeOnly.MinValue))), d.ToString("ddd d MMM", System.Globalization.CultureInfo.InvariantCulture)))];

    /// <summary>Whether care of a press is kept: the week leaves room for it.</summary>
    public bool KeepsCare(string pressId) => care[pressId].IsKept;

    private WeekProblem Make()
    {
        HashSet<string> known = [.. runs.Select(r => r.Id)];
        DateTimeOffset before = times.At(From.AddDays(-PrintedDays));
        IReadOnlyList<WeekPress> presses = [.. catalogue.Presses.Select(p => new WeekPress(p.Id, Spans(p.Id), null, Windows(p.Id), care[p.Id].Care, care[p.Id].Stand))];
        return new(presses, [.. runs.Select(RunOf)], new ChangeRates(), Spans(null),
            [.. book.Stood.Where(s => known.Contains(s.RunId) && s.PressId == PressOf(s.RunId) && s.Start < From.AddHours(FrozenHours)).OrderBy(s => s.Start)
                .Select(s => new WeekHold(s.RunId, PressOf(s.RunId), Math.Max(0, MinuteOf(s.Start))))],
            [.. book.Pins.Where(p => known.Contains(p.RunId)).Select(p => new WeekHold(p.RunId, PressOf(p.RunId), Math.Max(0, MinuteOf(p.Start))))],
            [.. book.Orders.Select(o => (IReadOnlyList<string>)[.. o.Where(known.Contains)]).Where(o => o.Count > 1)],
            Benches: benches.Count == 0 ? null : [.. benches.Select(b => new WeekBench(b.Id, [.. times.PlacesBetween(before, Until, b).Select(p => Joined(p, int.MinValue))], b.Name))],
            Printed: benches.Count == 0 ? null : [.. printed.Where(p => p.Run.FinishingSteps.Count > 0 && p.Ended > before)
                .Select(p => new WeekPrinted(p.Run.Id, MinuteOf(p.Ended), DueOf(p.Run), StepsOf(p.Run)))]);
    }

    // A run's files and its print condition are those of one press, so it waits for that one.
    public WeekRun RunOf(Laydown.Plan.Runs.Run run)
    {
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, run.StockId, StringComparison.Ordinal));
        PressDescription press = catalogue.Presses.First(p => string.Equals(p.Id, run.PressId, StringComparison.Ordinal));
        WeekTraits traits = stock is null ? new(run.StockId, false, 0, "", false, run.Mode.ModeId, "") : RunTraits.Of(run, stock);
        int minutes = (int)Math.Ceiling(run.Time.PrintMinutes + run.Time.HandlingMinutes - 1e-9);
        return new(run.Id, new Dictionary<string, int>(StringComparer.Ordinal) { [press.Id] = Math.Max(1, minutes) }, traits, 0,
            DueOf(run), 1, StepsOf(run), MayPause: true, care[press.Id].UsesOf(run));
    }

    private int DueOf(Laydown.Plan.Runs.Run run) => MinuteOf(times.At(run.Due.AddDays(1), TimeOnly.MinValue));

    // By kind where there are benches and the run knows its kinds, what follows at the same bench together; else in one.
    private IReadOnlyList<WeekStep> StepsOf(Laydown.Plan.Runs.Run run)
    {
        if (benches.Count == 0 || run.FinishingSteps.Count == 0)
            return run.FinishingMinutes > 1e-9 ? [new("finishing", (int)Math.Ceiling(run.FinishingMinutes - 1e-9), false)] : [];
        List<(WorkBench? Bench, List<FinishingStep> Steps)> parts = [];
        foreach (FinishingStep step in run.FinishingSteps)
        {
            WorkBench? bench = benches.FirstOrDefault(b => b.Kinds.Contains(step.Kind));
            if (parts.Count > 0 && parts[^1].Bench == bench)
                parts[^1].Steps.Add(step);
            else
                parts.Add((bench, [step]));
        }

        return [.. parts.Select(p => new WeekStep(
            string.Join(", ", p.Steps.Select(s => FinishingWords.Of(s.Kind))), (int)Math.Ceiling(p.Steps.Sum(s => s.Minutes) - 1e-9), p.Bench?.GoesOnAlone == true, p.Bench?.Id))];
    }

    /// <summary>Whether people enough are there for a run's sheets, in words; null where they are.</summary>
    public string? CrewWords(Laydown.Plan.Runs.Run run, WeekPlace place) => WeekCrew.Words(run, catalogue.Stocks, times, InstantOf(place.SetUpStart), InstantOf(place.End), Until);

    private string PressOf(string runId) => runs.First(r => r.Id == runId).PressId;

    /// <summary>Maintenance windows to the end of the time planned.</summary>
    public IReadOnlyList<WeekMaintenance> Maintenance(DateTimeOffset until) => [.. catalogue.Presses.SelectMany(p => times.MaintenanceBetween(From, until, p.Id)
        .Select(m => new WeekMaintenance(p.Id, m.Start, m.End, m.What, m.By, m.RunsMayPause)))];

    private IReadOnlyList<WeekWindow>? Windows(string pressId) => [.. times.MaintenanceBetween(From, Until, pressId)
        .Select(m => new WeekWindow(Math.Max(0, MinuteOf(m.Start)), MinuteOf(m.End), m.What, m.RunsMayPause)).Where(w => w.End > w.Start)];

    private IReadOnlyList<WeekSpan> Spans(string? pressId) => Joined(times.Between(From, Until, pressId), 0);

    private List<WeekSpan> Joined(IReadOnlyList<OpenSpan> open, int first)
    {
        List<WeekSpan> spans = [];
        foreach (OpenSpan span in open)
        {
            (int start, int end) = (Math.Max(first, MinuteOf(span.Start)), MinuteOf(span.End));
            if (spans.Count > 0 && start <= spans[^1].End)
                spans[^1] = spans[^1] with { End = Math.Max(spans[^1].End, end) };
            else if (end > start)
                spans.Add(new(start, end));
        }

        return spans;
    }
}
