using Laydown.Raster.Sheets;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Sheets;

public sealed class SideTurnLawTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(8, 8)]
    [InlineData(37, 50)]
    [InlineData(16, 9)]
    [InlineData(7, 64)]
    public void Blocks_give_what_single_pixels_give(int rows, int columns)
    {
        Tile seen = new(2, rows, columns);
        for (int ink = 0; ink < 2; ink++)
        {
            for (int row = 0; row < rows; row++)
                Picture.Noise(2, rows, columns, 5).ReadRow(ink, row, 0, seen.Row(ink, row));
        }

        foreach (Lanes lanes in LanesHere.All)
        {
            for (int way = 0; way < 4; way++)
                Assert.Equal(Turned(seen, way, Lanes.Plain), Turned(seen, way, lanes));
        }
    }

    private static ushort[] Turned(Tile seen, int way, Lanes lanes)
    {
        Tile sheet = new(2, seen.Columns + 5, seen.Rows + 3);
        for (int ink = 0; ink < 2; ink++)
            SideTurn.Run(seen, ink, (way & 1) != 0, (way & 2) != 0, sheet, 4, 2, lanes);
        return [.. Enumerable.Range(0, 2).SelectMany(ink => Enumerable.Range(0, sheet.Rows).SelectMany(row => sheet.Row(ink, row).ToArray()))];
    }
}
