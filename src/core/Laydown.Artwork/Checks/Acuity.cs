namespace Laydown.Artwork.Checks;

/// <summary>What a good eye (visus 1) resolves: a stroke of one arc minute, a letter of five. [Howett1983]</summary>
public static class Acuity
{
    private const double ArcMinute = Math.PI / 180 / 60;

    /// <summary>Resolution at which one pixel covers one arc minute: about 87.3 ppi at 1 m, 3438 ppi over the distance in inches.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not over 0 up to 10 km.</exception>
    public static double Ppi(double distanceM) => 25.4 / PixelMm(distanceM);

    /// <summary>Width of one arc minute, mm: 0.2909 mm for each metre.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not over 0 up to 10 km.</exception>
    public static double PixelMm(double distanceM) => Measures.Bounds.Within(distanceM, 1e-3, 1e4) * 1000 * Math.Tan(ArcMinute);

    /// <summary>Least height of a capital letter, mm: five arc minutes, 1.454 mm for each metre.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not over 0 up to 10 km.</exception>
    public static double CapitalMm(double distanceM) => 5 * PixelMm(distanceM);
}
