using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;

namespace Laydown.Shop.Layout;

/// <summary>What the press's time costs, as far as it is needed to weigh one way of laying out against another.</summary>
internal static class PressMinutes
{
    /// <summary>Price of printing an extent some times over in the mode the run would get; set-up and loading are not in it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="extent">Width across the belt and length along the feed, mm.</param>
    /// <param name="times">How often.</param>
    internal static decimal Printing(FormedRun run, SizeMm extent, int times)
    {
        Mode mode = run.Press.FindMode(run.ModeId)!;
        IReadOnlyList<int> faces = new ModeDemand(1, null, null, run.Stack, default).LayersByFace;
        double seconds = faces.Sum(l => Scanning.Of(run.Press, mode, extent.WidthMm, extent.HeightMm, l).Match(p => p.Seconds, _ => 0));
        return Of(run.Press, seconds * times / 60);
    }

    /// <summary>Price of setting the press up once.</summary>
    internal static decimal SetUp(PressDescription press) => Of(press, press.Costs.SetUpMinutes);

    /// <summary>Price of hanging or laying once.</summary>
    internal static decimal Loading(PressDescription press) => Of(press, (press.Costs.LoadSeconds + press.Costs.UnloadSeconds) / 60);

    private static decimal Of(PressDescription press, double minutes) => press.Costs.PerHour.Units * (decimal)minutes / 60m;
}
