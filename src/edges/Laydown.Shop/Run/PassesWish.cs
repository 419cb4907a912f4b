using Laydown.Measures;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;

namespace Laydown.Shop.Run;

/// <summary>What passes are asked for.</summary>
/// <param name="Press">The press.</param>
/// <param name="Mode">The mode.</param>
/// <param name="Stack">The layers.</param>
/// <param name="Sheet">The sheet: across the belt × along the feed, mm.</param>
/// <param name="DistanceM">Distance of the nearest viewer, m.</param>
/// <param name="Run">The run, or null for a mode alone.</param>
public sealed record PassesWish(PressDescription Press, Mode Mode, LayerStack Stack, SizeMm Sheet, double DistanceM, RunRecord? Run = null)
{
    /// <summary>Whether the run is printed from dots of its own, in which missing nozzles are made good.</summary>
    public bool HasDots => Run?.Files.Any(f => string.Equals(f.What, "dots", StringComparison.Ordinal)) == true;
}
