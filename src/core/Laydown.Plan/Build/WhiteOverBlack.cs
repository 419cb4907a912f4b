using Laydown.Press.Inks;

namespace Laydown.Plan.Build;

/// <summary>How much room light a white returns with black behind it: block-out darkens the picture by what the white lets through.</summary>
/// <remarks>
/// Inside, the white returns ρ = sinh(bSX) / (a sinh(bSX) + b cosh(bSX)) with a = 1 + K/S, b = √(a² − 1) [Kubelka1948]; K/S 0.002 stands for a good
/// white (common practice, no source). The surface of n = 1.5 lets 0.950 in from 45°, 0.427 of what is inside out straight, and sends 0.596 back in
/// [Judd1942]: R = 0.950 · 0.427 ρ / (1 − 0.596 ρ).
/// </remarks>
public static class WhiteOverBlack
{
    private const double In = 0.950, Out = 0.427, Inner = 0.596, Absorption = 0.002;

    /// <summary>Reflectance at 45:0, gloss left out, 0 to 1.</summary>
    /// <param name="scatter">S·X of the white, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or under 0.</exception>
    public static double Reflectance(double scatter)
    {
        if (!(scatter >= 0))
            throw new ArgumentOutOfRangeException(nameof(scatter), scatter, "S·X: wanted 0 or more.");
        double a = 1 + Absorption, b = Math.Sqrt((a * a) - 1), tangent = Math.Tanh(b * scatter);
        double inside = tangent / ((a * tangent) + b);
        return In * Out * inside / (1 - (Inner * inside));
    }

    /// <summary>What to know before black goes behind white of this strength; null where the ink's density is unknown.</summary>
    internal static string? Sentence(InkSet inks, double percent)
    {
        if (inks.Find(InkRole.White) is not { SolidDensity: > 0 } white)
            return null;
        double one = Math.Pow(10, white.SolidDensity) - 1, now = Reflectance(one * percent / 100), twice = Reflectance(one * 2);
        return percent < 200
            ? Invariant($"With black behind it, {percent:0} % of this white returns about {100 * now:0} % of the light, so the picture is darker than on thick white; 200 % would return {100 * twice:0} %.")
            : Invariant($"With black behind it, {percent:0} % of this white returns about {100 * now:0} % of the light.");
    }
}
