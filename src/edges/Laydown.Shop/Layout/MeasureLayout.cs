using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop.Colour;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layout;

/// <summary>Measures the ink of a run's items, so that layouts of it can be priced; takes as long as the pages take to render.</summary>
/// <param name="measure">Measures the ink of a piece.</param>
public sealed class MeasureLayout(IInkMeasure measure)
{
    /// <summary>The items with their ink.</summary>
    /// <returns>The items, or why one cannot be measured.</returns>
    public Task<Reading<IReadOnlyList<PlannedItem>>> MeasureAsync(OpenedLayout opened, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(opened);
        return PlanRuns.MeasureAsync(measure, opened.Context, cancellation);
    }
}
