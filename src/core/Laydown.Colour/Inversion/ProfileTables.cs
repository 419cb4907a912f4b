using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>What an output profile holds: inks → colour and colour → inks on even grids, and which colours can be printed.</summary>
/// <param name="MediaWhite">The bare stock, tristimulus values under D50; the perfect diffuser has Y = 100.</param>
/// <param name="Inks">Number of inks, 3 to 8.</param>
/// <param name="ForwardSteps">Nodes along each ink.</param>
/// <param name="Forward">Media-relative colour of each node: steps^inks entries, first ink slowest, last ink fastest.</param>
/// <param name="InverseSteps">Nodes along L*, a* and b*.</param>
/// <param name="Colorimetric">Inks for each node, 0 to 1: steps³ × inks values; L* slowest, b* fastest; the nearest printable
/// colour.</param>
/// <param name="Perceptual">The same with the lightness range fitted to the print's (black point compensation).</param>
/// <param name="Distance">How far each node lies outside the gamut, weighted ΔE; about 0 inside.</param>
/// <remarks>L* runs from 0 to 100; a* and b* from −128 to 127.996 (65535/256 − 128).</remarks>
public sealed record ProfileTables(
    Xyz MediaWhite,
    int Inks,
    int ForwardSteps,
    IReadOnlyList<Lab> Forward,
    int InverseSteps,
    IReadOnlyList<float> Colorimetric,
    IReadOnlyList<float> Perceptual,
    IReadOnlyList<float> Distance)
{
    /// <summary>The colour of a node of the inverse tables.</summary>
    public static Lab Node(int steps, int l, int a, int b) => new(100.0 * l / (steps - 1), Axis(steps, a), Axis(steps, b));

    private static double Axis(int steps, int node) => (65535.0 / 256 * node / (steps - 1)) - 128;
}
