using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Raster.Tiles;

namespace Laydown.Output.PressFiles;

/// <summary>Finds named plates with ink that no layer would print: a colour that would silently be missing.</summary>
internal static class LostPlates
{
    /// <summary>Ink up to this code of 255 counts as none.</summary>
    private const byte Bare = 2;

    /// <summary>One fault for each plate of a colour, or of no known meaning, that has ink and that no layer of the stack asks for.</summary>
    /// <param name="file">Artwork for messages.</param>
    /// <param name="page">Its page.</param>
    /// <param name="picture">Plates of the page.</param>
    /// <param name="plates">Their names.</param>
    /// <param name="separations">What is known of the page's separations.</param>
    /// <param name="stack">The layers.</param>
    public static IReadOnlyList<InputFault> Of(
        string file, int page, ITileSource picture, IReadOnlyList<string> plates, IReadOnlyList<NamedSeparation> separations, LayerStack stack) =>
    [
        .. Enumerable.Range(4, Math.Max(0, plates.Count - 4))
            .Where(p => plates[p] != "Alpha" && IsToBeSeen(plates[p], separations) && !IsAskedFor(plates[p], stack) && HasInk(picture, p))
            .Select(p => new InputFault(
                file, page, "separations", Invariant($"ink in \"{plates[p]}\", which no layer prints"), "process inks, or a separation with a known meaning")),
    ];

    private static bool IsToBeSeen(string plate, IReadOnlyList<NamedSeparation> separations) =>
        separations.FirstOrDefault(s => s.Name == plate)?.Role is null or SeparationRole.Colour or SeparationRole.Unknown;

    private static bool IsAskedFor(string plate, LayerStack stack) =>
        stack.Layers.Any(l => string.Equals(l.SeparationName, plate, StringComparison.OrdinalIgnoreCase));

    private static bool HasInk(ITileSource picture, int plate)
    {
        ushort[] line = new ushort[picture.Columns];
        for (int row = 0; row < picture.Rows; row++)
        {
            picture.ReadRow(plate, row, 0, line);
            if (line.AsSpan().ContainsAnyExceptInRange((ushort)0, (ushort)(Bare * 257)))
                return true;
        }

        return false;
    }
}
