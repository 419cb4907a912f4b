using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Screens;

/// <summary>Layers, tiles and dots for the tests of screens.</summary>
internal static class Screened
{
    /// <summary>Inks of a layer with light inks and white.</summary>
    public static readonly ScreenInk[] Seven =
    [
        new("cyan", 0.6, null), new("magenta", 0.65, null), new("yellow", 0.1, null), new("black", 1, null),
        new("light cyan", 0.3, 0), new("light magenta", 0.3, 1), new("white", 0, null),
    ];

    public static readonly DropLevels Two = new([7, 14]);

    public static readonly DropLevels Three = new([6, 12, 24]);

    /// <summary>One ink alone.</summary>
    public static ScreenInk[] One => [new("black", 1, null)];

    public static IEnumerable<DropLevels> AllDrops() => [DropLevels.One, Two, Three];

    /// <summary>A tile of random tones; about one in ten is bare, as many are full.</summary>
    public static Tile Random(int inks, int rows, int columns, int seed)
    {
        Tile tile = new(inks, rows, columns);
        Random chance = new(seed);
        for (int ink = 0; ink < inks; ink++)
        {
            for (int row = 0; row < rows; row++)
            {
                foreach (ref ushort value in tile.Row(ink, row))
                    value = chance.Next(10) switch { 0 => 0, 1 => Tile.Full, _ => (ushort)chance.Next(65536) };
            }
        }

        return tile;
    }

    /// <summary>A tile of one tone for each ink.</summary>
    public static Tile Flat(int rows, int columns, params ushort[] tones)
    {
        Tile tile = new(tones.Length, rows, columns);
        for (int ink = 0; ink < tones.Length; ink++)
        {
            for (int row = 0; row < rows; row++)
                tile.Row(ink, row).Fill(tones[ink]);
        }

        return tile;
    }

    /// <summary>The whole of a tile without margin, screened.</summary>
    public static DotRows Run(ILayerScreen screen, Tile tile)
    {
        int reach = screen.ReachPixels;
        DotRows dots = new(tile.Inks, tile.Rows - (2 * reach), tile.Columns - (2 * reach), screen.BitsPerDot);
        for (int ink = 0; ink < dots.Inks; ink++)
            dots.Plane(ink).Fill(0xA5);
        screen.Run(tile, dots.Rows, dots.Columns, dots, 0);
        return dots;
    }

    /// <summary>The same, for a tile whose first column and row behind the margin are the sheet's first.</summary>
    public static DotRows Run(ILayerScreen screen, Tile tile, int margin)
    {
        tile.PlaceAt(-margin, -margin);
        return Run(screen, tile);
    }

    /// <summary>All bytes of all inks.</summary>
    public static byte[] Bytes(DotRows dots) => Enumerable.Range(0, dots.Inks).SelectMany(i => dots.Plane(i).ToArray()).ToArray();

    /// <summary>Mean volume of one ink as a share of full laydown, counted by the program's own counter.</summary>
    public static double Mean(DotRows dots, int ink, DropLevels drops)
    {
        long[] counts = new long[drops.Levels];
        for (int row = 0; row < dots.Rows; row++)
            DotCounts.Add(dots.Row(ink, row), dots.BitsPerDot, 0, dots.Columns, counts);
        return counts.Select((c, level) => c * drops.ShareOf(level)).Sum() / ((double)dots.Rows * dots.Columns);
    }
}
