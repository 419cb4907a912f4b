using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>How much ink a laydown takes.</summary>
/// <remarks>Volume = drops per m² × drop volume × coverage. UV ink is nearly all solid, so 1 ml/m² is 1 µm of wet film.</remarks>
public static class InkVolume
{
    /// <summary>Dots in a square metre.</summary>
    public static double DotsPerM2(int scanDpi, int feedDpi) =>
        Bounds.Within(scanDpi, 1, 100_000) / 0.0254 * (Bounds.Within(feedDpi, 1, 100_000) / 0.0254);

    /// <summary>Full laydown of one ink, ml/m²: every dot with the largest drop.</summary>
    public static double FullMlPerM2(Mode mode) => FullMlPerM2(mode.ScanDpi, mode.FeedDpi, mode.DropsPl[^1]);

    /// <summary>Full laydown of one ink, ml/m².</summary>
    /// <param name="scanDpi">Dots per inch along the scan.</param>
    /// <param name="feedDpi">Dots per inch along the feed.</param>
    /// <param name="dropPl">Volume of the largest drop, pl, over 0 to 1000.</param>
    public static double FullMlPerM2(int scanDpi, int feedDpi, double dropPl) =>
        DotsPerM2(scanDpi, feedDpi) * Bounds.Within(dropPl, 1e-6, 1000) * 1e-9;

    /// <summary>Ink for an area at a mean laydown.</summary>
    /// <param name="name">Name of the figure.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="coverage">Mean laydown, 1 = full laydown of one ink; 0 to 100.</param>
    /// <param name="areaM2">Area, m².</param>
    public static Figure Of(string name, Mode mode, double coverage, double areaM2)
    {
        double full = FullMlPerM2(mode);
        return new(name, full * Bounds.Within(coverage, 0, 100) * Bounds.Within(areaM2, 0, 1e9), "ml",
            Invariant($"{DotsPerM2(mode.ScanDpi, mode.FeedDpi):0.000e0} dots/m² × {mode.DropsPl[^1]} pl = {full:0.00} ml/m²; × {coverage * 100:0.0} % × {areaM2:0.000} m²"),
            FigureSource.Definition);
    }
}
