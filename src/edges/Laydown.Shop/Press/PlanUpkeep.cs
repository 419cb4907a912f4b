using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Log;
using Laydown.Plan.Upkeep;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Shop.Week;

namespace Laydown.Shop.Press;

/// <summary>Plans the upkeep of a press of the shop along its planned runs.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its runs.</param>
/// <param name="book">What was read and done at the presses.</param>
/// <param name="week">The week as planned last; null where nobody plans one.</param>
/// <param name="levels">Knows levels that the log holds, too; null where the book alone tells them.</param>
/// <param name="log">What was printed already; null where the shop keeps no log.</param>
public sealed class PlanUpkeep(
    Catalogue catalogue, IShopStore store, IPressCareBook book, PlanWeek? week = null, TankLevels? levels = null, ILogStore? log = null)
{
    /// <summary>Days that are planned when nobody says.</summary>
    public const int UsualDays = 14;

    private const int DaysBack = 120;
    private const int MostPrinted = 20_000;

    /// <summary>The plan, or why there is none.</summary>
    /// <remarks>Runs and their care stand as the week has them, at the same minutes; without a week runs come one after the other through the shifts, earliest due first.</remarks>
    /// <param name="pressId">The press.</param>
    /// <param name="from">Start of the time planned.</param>
    /// <param name="days">How long, days: 1 to 370.</param>
    /// <param name="cancellation">Ends the work.</param>
    public async Task<Reading<UpkeepPlan>> PlanAsync(string pressId, DateTimeOffset from, int days, CancellationToken cancellation) =>
        (await RequestAsync(pressId, from, days, cancellation)).Then(r => UpkeepPlanner.Plan(r, "upkeep"));

    /// <summary>What the plan is made from, for a file of its own.</summary>
    public async Task<Reading<UpkeepRequest>> RequestAsync(string pressId, DateTimeOffset from, int days, CancellationToken cancellation)
    {
        List<InputFault> faults = [];
        PressDescription? press = catalogue.Presses.FirstOrDefault(p => string.Equals(p.Id, pressId, StringComparison.Ordinal));
        if (press is null)
            faults.Add(new("upkeep", null, "pressId", pressId, "one of " + string.Join(", ", catalogue.Presses.Select(p => p.Id))));
        if (catalogue.Calendar is null)
            faults.Add(new("calendar.json", null, "file", "no such file", "the shifts and holidays of the shop"));
        if (days is < 1 or > UpkeepRequest.MostDays)
            faults.Add(new("upkeep", null, "days", Invariant($"{days}"), Invariant($"1 to {UpkeepRequest.MostDays}")));
        if (faults.Count > 0)
            return Reading.Refused<UpkeepRequest>(faults);

        OpenTimes open = new(catalogue.Calendar!);
        DateTimeOffset to = from.AddDays(days);
        PressCarePage? page = await book.ReadAsync(pressId, cancellation);
        IReadOnlyList<RunActual> printed = log is null ? [] : await log.ActualsAsync(new LogSpan(From: from.AddDays(-DaysBack)), MostPrinted, cancellation);
        Reading<WeekPressUse> used = week is null ? Reading.Of(new WeekPressUse(await UsesAsync(press!, printed, open.Between(from, to, pressId), cancellation), null)) : await week.OnPressAsync(pressId, from, cancellation);
        PressState state = await PressStates.OfAsync(press!, page?.State, printed, from, levels, cancellation);
        return used.Then(u => Reading.Of(new UpkeepRequest(
            press!, InksOf(catalogue, press!), catalogue.Rates, catalogue.Calendar!, state, page?.Packs ?? [], [.. u.Uses.Where(one => one.Start < to)], from, to, u.Laid)));
    }

    private async Task<IReadOnlyList<PressUse>> UsesAsync(PressDescription press, IReadOnlyList<RunActual> printed, IReadOnlyList<OpenSpan> shifts, CancellationToken cancellation)
    {
        HashSet<string> done = [.. printed.Select(a => a.RunId)];
        IEnumerable<Laydown.Plan.Runs.Run> runs = (await WaitingRuns.OfAsync(store, cancellation)).Where(r => r.PressId == press.Id && !done.Contains(r.Id));
        return PressUses.Place(runs.Select(r => (r, (DateTimeOffset?)null)), press, shifts).Uses;
    }

    /// <summary>The inks of a press: those of its first print condition, else the first of the shop.</summary>
    internal static InkSet InksOf(Catalogue catalogue, PressDescription press)
    {
        PrintCondition? condition = catalogue.Conditions.FirstOrDefault(c => c.PressId == press.Id);
        return catalogue.InkSets.FirstOrDefault(s => s.Id == condition?.InkSetId) ?? catalogue.InkSets[0];
    }
}
