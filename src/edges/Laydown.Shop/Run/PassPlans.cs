using Laydown.Measures;
using Laydown.Press.Machines;
using Laydown.Raster.Passes;

namespace Laydown.Shop.Run;

/// <summary>From press and mode to the plan of passes.</summary>
public static class PassPlans
{
    /// <summary>The plan of one face of a sheet.</summary>
    /// <param name="press">The press.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="layers">Layers of that face, printed in one go.</param>
    /// <param name="rows">Rows of the sheet along the feed; row 0 comes under the head first.</param>
    /// <returns>The plan, or the faults of the mode.</returns>
    public static Reading<PassPlan> Of(PressDescription press, Mode mode, int layers, int rows)
    {
        Channel longest = press.Channels.MaxBy(c => (double)mode.NozzlesUsed / c.NozzlesPerInch)!;
        return Coverage.Split(mode, longest, layers).Then(cover => Reading.Of(new PassPlan(
            new(cover.Nozzles, cover.RowsBetweenNozzles, cover.FeedRows, cover.Passes, cover.Blocks, mode.TwoWay, mode.ScanDpi, mode.FeedDpi,
                Math.Min(mode.FeatherNozzles ?? 0, cover.Passes > 1 ? cover.FeedRows : 0)),
            rows)));
    }
}
