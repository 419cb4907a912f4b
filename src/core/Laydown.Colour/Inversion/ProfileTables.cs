using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>What an output profile holds: inks → colour and colour → inks on grids, and which colours can be printed.</summary>
/// <param name="MediaWhite">The bare stock, tristimulus values under D50; the perfect diffuser has Y = 100.</param>
/// <param name="Inks">Number of inks, 3 to 8.</param>
/// <param name="ForwardSteps">Nodes along each ink, even.</param>
/// <param name="Forward">Media-relative colour of each node: steps^inks entries, first ink slowest, last ink fastest.</param>
/// <param name="Axes">Where the nodes of the inverse tables lie.</param>
/// <param name="Colorimetric">Inks for each node, 0 to 1: steps³ × inks values; L* slowest, b* fastest; the nearest printable
/// colour.</param>
/// <param name="Perceptual">The same with lightness and chroma fitted to the print's.</param>
/// <param name="Distance">How far each node lies outside the gamut, weighted ΔE; about 0 inside.</param>
public sealed record ProfileTables(
    Xyz MediaWhite,
    int Inks,
    int ForwardSteps,
    IReadOnlyList<Lab> Forward,
    InverseAxes Axes,
    IReadOnlyList<float> Colorimetric,
    IReadOnlyList<float> Perceptual,
    IReadOnlyList<float> Distance)
{
    /// <summary>Nodes along L*, a* and b* of the inverse tables.</summary>
    public int InverseSteps => Axes.L.Count;
}
