using Laydown.Layout.Search;
using Laydown.Plan.Calendar;
using Laydown.Plan.Week;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Week;

/// <summary>From the shop's runs, presses and calendar to a problem in minutes, and back to its clock.</summary>
internal sealed class WeekDesk
{
    /// <summary>What begins within so many hours is left where it stands; common practice, no source.</summary>
    private const int FrozenHours = 2;

    private readonly Catalogue catalogue;
    private readonly OpenTimes times;
    private readonly IReadOnlyList<Laydown.Plan.Runs.Run> runs;
    private readonly WeekBook book;

    public WeekDesk(Catalogue catalogue, ShopCalendar calendar, IReadOnlyList<Laydown.Plan.Runs.Run> runs, WeekBook book, DateTimeOffset now)
    {
        (this.catalogue, this.runs, this.book) = (catalogue, runs, book);
        times = new(calendar);
        DateTimeOffset local = times.At(now);
        From = local.AddTicks(-(local.Ticks % TimeSpan.TicksPerMinute));
        DateOnly last = runs.Select(r => r.Due).Append(DateOnly.FromDateTime(From.Date).AddDays(14)).Max();
        Until = times.At(From.AddDays(Math.Clamp(last.DayNumber - DateOnly.FromDateTime(From.Date).DayNumber + 28, 28, 366)));
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

    private WeekProblem Make()
    {
        HashSet<string> known = [.. runs.Select(r => r.Id)];
        IReadOnlyList<WeekPress> presses = [.. catalogue.Presses.Select(p => new WeekPress(p.Id, Spans(p.Id), null, Windows(p.Id)))];
        return new(presses, [.. runs.Select(RunOf)], new ChangeRates(), Spans(null),
            [.. book.Stood.Where(s => known.Contains(s.RunId) && s.PressId == PressOf(s.RunId) && s.Start < From.AddHours(FrozenHours)).OrderBy(s => s.Start)
                .Select(s => new WeekHold(s.RunId, PressOf(s.RunId), Math.Max(0, MinuteOf(s.Start))))],
            [.. book.Pins.Where(p => known.Contains(p.RunId)).Select(p => new WeekHold(p.RunId, PressOf(p.RunId), Math.Max(0, MinuteOf(p.Start))))],
            [.. book.Orders.Select(o => (IReadOnlyList<string>)[.. o.Where(known.Contains)]).Where(o => o.Count > 1)]);
    }

    // A run's files and its print condition are those of one press, so it waits for that one.
    public WeekRun RunOf(Laydown.Plan.Runs.Run run)
    {
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, run.StockId, StringComparison.Ordinal));
        PressDescription press = catalogue.Presses.First(p => string.Equals(p.Id, run.PressId, StringComparison.Ordinal));
        WeekTraits traits = stock is null ? new(run.StockId, false, 0, "", false, run.Mode.ModeId, "") : RunTraits.Of(run, stock);
        int minutes = (int)Math.Ceiling(run.Time.PrintMinutes + run.Time.HandlingMinutes - 1e-9), finishing = (int)Math.Ceiling(run.FinishingMinutes - 1e-9);
        return new(run.Id, new Dictionary<string, int>(StringComparer.Ordinal) { [press.Id] = Math.Max(1, minutes) }, traits, 0,
            MinuteOf(times.At(run.Due.AddDays(1), TimeOnly.MinValue)), 1, finishing > 0 ? [new("finishing", finishing, false)] : [], MayPause: true);
    }

    private string PressOf(string runId) => runs.First(r => r.Id == runId).PressId;

    /// <summary>Maintenance windows to the end of the time planned.</summary>
    public IReadOnlyList<WeekMaintenance> Maintenance(DateTimeOffset until) => [.. catalogue.Presses.SelectMany(p => times.MaintenanceBetween(From, until, p.Id)
        .Select(m => new WeekMaintenance(p.Id, m.Start, m.End, m.What, m.By, m.RunsMayPause)))];

    private IReadOnlyList<WeekWindow>? Windows(string pressId) => [.. times.MaintenanceBetween(From, Until, pressId)
        .Select(m => new WeekWindow(Math.Max(0, MinuteOf(m.Start)), MinuteOf(m.End), m.What, m.RunsMayPause)).Where(w => w.End > w.Start)];

    private IReadOnlyList<WeekSpan> Spans(string? pressId)
    {
        List<WeekSpan> spans = [];
        foreach (OpenSpan span in times.Between(From, Until, pressId))
        {
            (int start, int end) = (Math.Max(0, MinuteOf(span.Start)), MinuteOf(span.End));
            if (spans.Count > 0 && start <= spans[^1].End)
                spans[^1] = spans[^1] with { End = Math.Max(spans[^1].End, end) };
            else if (end > start)
                spans.Add(new(start, end));
        }

        return spans;
    }
}
