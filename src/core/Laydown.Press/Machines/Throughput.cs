using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>Rates of production: areas and boards in an hour, and handling that printing does not hide.</summary>
public static class Throughput
{
    /// <summary>Area in an hour, m²/h.</summary>
    /// <param name="areaM2">Area of one sheet, m².</param>
    /// <param name="secondsEach">Seconds from one sheet to the next, over 0.</param>
    public static double M2PerHour(double areaM2, double secondsEach) => areaM2 * 3600 / Bounds.Within(secondsEach, 1e-6, 1e9);

    /// <summary>Loading and off-loading of one sheet that is not hidden behind printing in steady work, s.</summary>
    /// <remarks>Only the given share can be done while another sheet prints, and never more than the printing lasts.</remarks>
    public static double UnhiddenSeconds(PressCosts costs, double printSeconds) =>
        costs.LoadSeconds + costs.UnloadSeconds - HiddenSeconds(costs, printSeconds);

    /// <summary>Loading and off-loading of one sheet done while another prints, s.</summary>
    public static double HiddenSeconds(PressCosts costs, double printSeconds) =>
        Math.Min(printSeconds, (costs.LoadSeconds + costs.UnloadSeconds) * Bounds.Within(costs.LoadOverlapPercent, 0, 100) / 100);

    /// <summary>Boards of a size in an hour of steady work, one face, the given layers in one go.</summary>
    public static Reading<Figure> BoardsPerHour(PressDescription press, Mode mode, SizeMm across, int layers) =>
        Scanning.Of(press, mode, across.WidthMm, across.HeightMm, layers).Then(scan =>
        {
            double unhidden = UnhiddenSeconds(press.Costs, scan.Seconds);
            return Reading.Of(new Figure("boards in an hour", 3600 / (scan.Seconds + unhidden), "boards/h",
                Invariant($"3600 s / ({scan.Scans} scans × {scan.SecondsPerScan:0.###} s + {unhidden:0.#} s handling not hidden)"), FigureSource.Derived));
        });
}
