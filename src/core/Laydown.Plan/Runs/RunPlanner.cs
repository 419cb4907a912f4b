using Laydown.Measures;
using Laydown.Press.Machines;

namespace Laydown.Plan.Runs;

/// <summary>Plans a whole run from what is known of it: mode, time, ink, set-up, cost.</summary>
public static class RunPlanner
{
    /// <summary>Plans a run. Pure: the same request gives the same run.</summary>
    /// <returns>The run, or why it cannot be: no mode can print it, or the shop lacks a rate.</returns>
    /// <exception cref="ArgumentException">No item, no sheet, or an item that lies on no sheet.</exception>
    public static Reading<Run> Plan(RunRequest request)
    {
        Bounds.NotEmpty(request.Items);
        Bounds.NotEmpty(request.Sheets);
        foreach (PlannedItem item in request.Items)
            if (request.Pieces(item.Item.Id) == 0)
                throw new ArgumentException(Invariant($"Item {item.Item.Id} lies on no sheet of run {request.RunId}."), nameof(request));

        return ModeChooser.Choose(request.Press, request.Condition, request.InkSet, DemandOf(request), request.Bands, request.Overrule).Then(choice =>
        {
            Mode mode = request.Press.FindMode(choice.ModeId)!;
            IReadOnlyList<InkUse> inks = InkNeeds.Of(request, mode);
            return TimeOf(request, mode).Then(time => CostSheets.Of(request, time, inks).Then(cost => Reading.Of(new Run(
                request.RunId, request.Press.Id, request.Condition.Id, request.Stock.Id, request.Stack, choice,
                [.. request.Items.Select(i => new RunItem(i.Item.Id, i.OrderId, i.Item.Title, request.Pieces(i.Item.Id), i.Item.Due) { Asked = i.Item.Quantity })],
                request.Sheets, request.Belt, time, inks, SetUps.Of(request, mode, inks), cost, request.Items.Min(i => i.Item.Due),
                request.Beside.Count == 0 ? null : [.. request.Beside.Select(s => s.Id)])
            { LayoutNotes = LayoutNotes.Of(request), FinishingMinutes = CostSheets.FinishingMinutes(request), FinishingSteps = CostSheets.FinishingSteps(request) })));
        });
    }

    /// <summary>The time of a run in a mode, corrected by what the log says where the request brings that: whatever shows or prices a time asks here.</summary>
    /// <returns>The time, or why the mode cannot print the run.</returns>
    public static Reading<RunTime> TimeOf(RunRequest request, Mode mode) => RunTimes.Of(request, mode).Then(time => Reading.Of(
        request.Learnt is { Runs: > 0 } learnt ? time.Corrected(learnt.For(request.Press.Id, mode.Id, request.Stock.Id)) : time));

    /// <summary>What the mode of a run must bear: the nearest viewer, the smallest text, the narrowest code, the largest sheet.</summary>
    public static ModeDemand DemandOf(RunRequest request)
    {
        SizeMm largest = PrintedGo.Of(request).Select(g => g.Extent).MaxBy(s => s.AreaM2);
        return new(request.Items.Min(i => i.Item.ViewingDistanceM), request.Items.Min(i => i.SmallestTextPt),
            request.Items.Min(i => i.SmallestModuleMm), request.Stack, largest)
        {
            Stock = request.Stock,
            Beside = request.Beside,
            MaxInk = InkNeeds.HighestTotal(request),
            Sheets = RunTimes.Goes(request),
            MinutesLeft = request.MinutesLeft,
        };
    }
}
