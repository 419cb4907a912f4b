using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layout;

/// <summary>Measures the ink of a run's items, so that layouts of it can be priced; takes as long as the pages take to render.</summary>
/// <param name="measure">Measures the ink of a piece.</param>
public sealed class MeasureLayout(IInkMeasure measure)
{
    /// <summary>The items with their ink.</summary>
    /// <returns>The items, or why one cannot be measured.</returns>
    public async Task<Reading<IReadOnlyList<PlannedItem>>> MeasureAsync(OpenedLayout opened, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(opened);
        RunContext context = opened.Context;
        List<PlannedItem> items = [];
        foreach (FormedItem formed in opened.Formed.Items)
        {
            ItemRecord record = context.Items.First(i => string.Equals(i.Item.Id, formed.Ready.Item.Id, StringComparison.Ordinal)) with { Stack = formed.Stack };
            Reading<IReadOnlyList<LayerInk>> ink = await measure.MeasureAsync(record, context.Condition, context.InkSet, context.ProfilePath, cancellation);
            if (!ink.IsTaken)
                return Reading.Refused<IReadOnlyList<PlannedItem>>(ink.Faults);
            items.Add(PlanRuns.Planned(formed, ink.Value, record));
        }

        return Reading.Of<IReadOnlyList<PlannedItem>>(items);
    }
}
