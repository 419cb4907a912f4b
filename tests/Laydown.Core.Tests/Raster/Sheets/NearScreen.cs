using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Sheets;

/// <summary>A screen that shows what it was given: a dot where this pixel and one some way to the right and below are together over full.</summary>
internal sealed class NearScreen(int inks, int reach) : ILayerScreen
{
    public int Inks => inks;

    public int BitsPerDot => 1;

    public int ReachPixels => reach;

    public int GridPixels => 8;

    public void Run(Tile tile, int rows, int columns, DotRows target, int targetFirstColumn)
    {
        for (int ink = 0; ink < inks; ink++)
        {
            for (int row = 0; row < rows; row++)
            {
                for (int x = 0; x < columns; x++)
                {
                    int sum = tile.Row(ink, row + reach)[x + reach] + tile.Row(ink, row + (2 * reach))[x + (2 * reach)];
                    if (sum > Tile.Full)
                        target.Row(ink, row)[(targetFirstColumn + x) / 8] |= (byte)(0x80 >> (x % 8));
                }
            }
        }
    }
}
