using Laydown.Colour.Spaces;

namespace Laydown.Colour.Fits;

/// <summary>The scale in which mixtures are nearly linear: tristimulus values to the power 1/n, the Yule–Nielsen factor [Yule1951].</summary>
/// <param name="YuleNielsen">n, 1 to 100.</param>
/// <remarks>Ratios to D50, so that the perfect diffuser is 1, 1, 1. Ratios under <see cref="Least"/> count as that: no root of nothing.</remarks>
internal readonly record struct RootSpace(double YuleNielsen)
{
    /// <summary>Smallest ratio that is told apart, a density of 5.</summary>
    internal const double Least = 1e-5;

    /// <summary>Roots of a colour under D50.</summary>
    internal void Roots(Xyz colour, Span<double> roots)
    {
        Xyz white = WhitePoints.Pcs;
        roots[0] = Root(colour.X / white.X);
        roots[1] = Root(colour.Y / white.Y);
        roots[2] = Root(colour.Z / white.Z);
    }

    /// <summary>The colour behind roots.</summary>
    internal Xyz Colour(ReadOnlySpan<double> roots)
    {
        Xyz white = WhitePoints.Pcs;
        return new(white.X * Raise(roots[0]), white.Y * Raise(roots[1]), white.Z * Raise(roots[2]));
    }

    /// <summary>One root.</summary>
    internal double Root(double ratio) => Math.Pow(Math.Max(ratio, Least), 1 / YuleNielsen);

    /// <summary>One ratio from its root; roots under 0 count as 0.</summary>
    internal double Raise(double root) => YuleNielsen switch
    {
        2 => root <= 0 ? 0 : root * root,
        3 => root <= 0 ? 0 : root * root * root,
        _ => root <= 0 ? 0 : Math.Pow(root, YuleNielsen),
    };

    /// <summary>How steeply the ratio rises with its root.</summary>
    internal double Steepness(double root) => YuleNielsen switch
    {
        2 => root <= 0 ? 0 : 2 * root,
        3 => root <= 0 ? 0 : 3 * root * root,
        _ => root <= 0 ? 0 : YuleNielsen * Math.Pow(root, YuleNielsen - 1),
    };
}
