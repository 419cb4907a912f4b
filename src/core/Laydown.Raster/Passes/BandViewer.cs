using Laydown.Colour.Vision;
using Laydown.Measures;

namespace Laydown.Raster.Passes;

/// <summary>Who looks at the print.</summary>
/// <param name="DistanceM">Distance of the eye, m, 0.05 to 10 000.</param>
/// <param name="CdPerM2">Luminance of the print, cd/m²; 100 for white by good room light.</param>
public sealed record BandViewer(double DistanceM, double CdPerM2 = 100)
{
    /// <summary>Millimetres of the print in one degree of the view.</summary>
    public double MmPerDegree => 2 * Bounds.Within(DistanceM, 0.05, 10_000) * 1000 * Math.Tan(Math.PI / 360);

    /// <summary>The viewer's eye.</summary>
    public BartenEye Eye => BartenEye.For(CdPerM2);
}
