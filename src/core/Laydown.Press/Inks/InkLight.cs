namespace Laydown.Press.Inks;

/// <summary>What one full laydown of an ink does with light.</summary>
/// <param name="Role">The ink.</param>
/// <param name="Absorption">K·X of Kubelka and Munk for one full laydown, without unit, 36 bands from 380 nm to 730 nm, none under 0.</param>
/// <param name="Scatter">S·X of one full laydown, without unit, the same bands, none under 0; over 0 for a white.</param>
/// <param name="AbsorptionFrom">Where the absorption comes from.</param>
/// <param name="ScatterFrom">Where the scatter comes from.</param>
/// <param name="Curve">Laydown asked → laydown that acts, both percent, at even steps of what is asked from 0 % to 100 %; ascending from 0
/// to 100; at least two values.</param>
/// <param name="AbsorptionError">Standard error of each K·X, or null where nobody stated one.</param>
/// <param name="ScatterError">Standard error of each S·X, or null.</param>
public sealed record InkLight(
    InkRole Role,
    IReadOnlyList<double> Absorption,
    IReadOnlyList<double> Scatter,
    OpticsOrigin AbsorptionFrom,
    OpticsOrigin ScatterFrom,
    IReadOnlyList<double> Curve,
    IReadOnlyList<double>? AbsorptionError = null,
    IReadOnlyList<double>? ScatterError = null)
{
    /// <summary>Laydown to ask for so that a wanted one acts: the curve turned round.</summary>
    /// <param name="actingPercent">Laydown that is to act, percent of the full one, 0 to 100.</param>
    /// <returns>0 to 100; never falls.</returns>
    public double AskedPercent(double actingPercent)
    {
        double acting = Laydown.Measures.Bounds.Within(actingPercent, 0, 100);
        int above = 1;
        while (above < Curve.Count - 1 && Curve[above] < acting)
            above++;
        double rise = Curve[above] - Curve[above - 1], at = rise > 0 ? Math.Clamp((acting - Curve[above - 1]) / rise, 0, 1) : 1;
        return 100 * (above - 1 + at) / (Curve.Count - 1);
    }

    /// <summary>How many full laydowns act when a layer of this strength is asked for: more than one is shared evenly by two planes.</summary>
    /// <param name="strengthPercent">Laydown asked, percent of the full one, 0 to 200.</param>
    /// <returns>0 for nothing, 1 for one full laydown, at most 2.</returns>
    public double Laydowns(double strengthPercent)
    {
        double asked = Laydown.Measures.Bounds.Within(strengthPercent, 0, 200);
        int planes = asked > 100 ? 2 : 1;
        double place = asked / planes / 100 * (Curve.Count - 1);
        int below = Math.Min((int)place, Curve.Count - 2);
        return planes * (Curve[below] + ((place - below) * (Curve[below + 1] - Curve[below]))) / 100;
    }
}
