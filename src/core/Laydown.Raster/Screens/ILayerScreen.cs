using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>Turns contone of a layer's inks into dots. Keeps nothing between tiles, may be called by several threads, and gives the same
/// dots for any tiling.</summary>
public interface ILayerScreen
{
    /// <summary>How many inks it takes, in the order of the tile's planes.</summary>
    int Inks { get; }

    /// <summary>Bits of a dot: 1 or 2.</summary>
    int BitsPerDot { get; }

    /// <summary>Margin of contone that the tile carries on each of its four sides, px; 0 for arrays.</summary>
    int ReachPixels { get; }

    /// <summary>Tiles (without their margin) start at multiples of this on the picture, across and down; they end there too, but at the
    /// picture's right and lower edge.</summary>
    int GridPixels { get; }

    /// <summary>Screens one tile.</summary>
    /// <param name="tile">Contone with its margin; it knows where in the picture it lies.</param>
    /// <param name="rows">Rows without the margin.</param>
    /// <param name="columns">Columns without the margin.</param>
    /// <param name="target">Takes the dots: row 0 is the first row behind the margin. Bits of a last, partly filled byte are set to
    /// 0.</param>
    /// <param name="targetFirstColumn">Column of the target that takes the first; a multiple of 8 ÷ bits of a dot.</param>
    void Run(Tile tile, int rows, int columns, DotRows target, int targetFirstColumn);
}
