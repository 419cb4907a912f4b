namespace Laydown.Colour.Inversion;

/// <summary>A device link: from the three or four channels of a picture straight to the inks of a print condition.</summary>
/// <param name="Channels">Channels that go in: 3 for RGB (0 black, 1 full light), 4 for CMYK (0 bare, 1 solid).</param>
/// <param name="InkNames">Names of the inks that come out, in the order of the table.</param>
/// <param name="PreCurves">For each channel a curve before the table: at least two values from 0 to 1 at even steps, never falling.</param>
/// <param name="Steps">Nodes along each channel.</param>
/// <param name="Table">Inks, 0 to 1: steps^channels × inks values, first channel slowest, ink fastest; every node keeps the limits.</param>
public sealed record LinkTables(
    int Channels, IReadOnlyList<string> InkNames, IReadOnlyList<IReadOnlyList<float>> PreCurves, int Steps, IReadOnlyList<float> Table);
