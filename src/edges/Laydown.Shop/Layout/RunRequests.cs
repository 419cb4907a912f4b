using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Runs;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layout;

/// <summary>From a layout made by hand to what a run is planned from, as planning itself makes it.</summary>
/// <param name="catalogue">What the shop has.</param>
public sealed class RunRequests(Catalogue catalogue)
{
    /// <summary>The request for the run with another layout.</summary>
    /// <returns>The request, or why the sheets do not go onto the belt.</returns>
    internal Reading<RunRequest> Of(OpenedLayout opened, IReadOnlyList<SheetLayout> layouts, IReadOnlyList<PlannedItem> measured) =>
        SheetLayouts.OnBelt(opened.Formed, new(layouts, [])).Then(belt => Reading.Of(new RunRequest(
            opened.Record.Run.Id, opened.Context.Press, opened.Context.InkSet, opened.Context.Stock, opened.Context.Condition, catalogue.Rates,
            opened.Record.Run.Stack, measured, layouts, belt)
        {
            Bands = BandScores.Of,
            Overrule = opened.Record.Run.Mode.Overrule,
            Beside = opened.Context.Beside,
            Learnt = opened.Learnt,
            MinutesLeft = DueTimes.MinutesLeft(catalogue, opened.Record.Run.Id, opened.Record.Run.PressId, opened.Record.Run.Due),
        }));

    /// <summary>What a layout costs in the mode the run has; null where it cannot be reckoned.</summary>
    internal LayoutCost? CostOf(OpenedLayout opened, IReadOnlyList<SheetLayout> layouts, IReadOnlyList<PlannedItem> measured)
    {
        if (layouts.Count == 0)
            return null;
        Reading<LayoutCost> cost = Of(opened, layouts, measured).Then(request => RunPlanner.TimeOf(request, opened.Context.Mode).Then(time =>
            CostSheets.Of(request, time, InkNeeds.Of(request, opened.Context.Mode)).Then(sheet => Reading.Of(CostFrom(sheet, time)))));
        return cost.IsTaken ? cost.Value : null;
    }

    private static LayoutCost CostFrom(CostSheet sheet, RunTime time) => new(
        Money.Sum(sheet.Lines.Where(l => l.Name == "Media").Select(l => l.Amount)), sheet.Cost, sheet.Price, time.TotalMinutes);
}
