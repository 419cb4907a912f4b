using Laydown.Press.Stocks;

namespace Laydown.Plan.Build;

/// <summary>How far inks on opposite faces of a sheet shift against each other for one who does not look straight on.</summary>
/// <remarks>The shift is d·tan θ′ with sin θ′ = sin θ / n; n = 1.49 for acrylic and near enough for other clear plastics.</remarks>
public static class Parallax
{
    /// <summary>From this shift on, mm, the faces do not pass for one: a stroke is about as thin (common practice, no source).</summary>
    public const double NoticedMm = 0.2;

    /// <summary>Angle of one who walks past, degrees.</summary>
    public const double SlantDegrees = 30;

    private const double Index = 1.49;

    /// <summary>The shift, mm.</summary>
    /// <param name="thicknessMm">Thickness of the sheet, mm, 0 or more.</param>
    /// <param name="degrees">Angle to the normal in air, 0 to 89.</param>
    public static double ShiftMm(double thicknessMm, double degrees = SlantDegrees)
    {
        double sine = Math.Sin(degrees * Math.PI / 180) / Index;
        return thicknessMm * sine / Math.Sqrt(1 - (sine * sine));
    }

    /// <summary>Whether one sees the shift on this stock.</summary>
    public static bool Matters(Stock stock) => stock.Light != SheetLight.Opaque && ShiftMm(stock.ThicknessMm) >= NoticedMm;

    /// <summary>The shift in words.</summary>
    internal static string Sentence(Stock stock) => Invariant(
        $"Seen at {SlantDegrees:0}°, what lies on one face shifts by {ShiftMm(stock.ThicknessMm):0.0} mm against the other through {stock.ThicknessMm:0.#} mm of sheet; layers on one face do not.");
}
