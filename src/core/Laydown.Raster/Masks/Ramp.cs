using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>How much ink a feather allows at a distance.</summary>
/// <remarks>
/// Full × (d − ½) / W, at least bare, at most full, to the nearest code (halves up): d is the distance to the nearest bare pixel, from centre to centre
/// in pixel widths, and the edge lies half a pixel from that centre. Distances are known by their squares in units, which are whole.
/// </remarks>
internal sealed class Ramp
{
    private readonly ushort[] table;
    private readonly double widthPixels;
    private readonly int pixelWidth;

    /// <summary>A ramp of a width in pixels.</summary>
    public Ramp(double widthPixels, PixelShape shape)
    {
        this.widthPixels = Bounds.Within(widthPixels, 0, 2048);
        pixelWidth = shape.Width;

        // The first square at which all is allowed; whatever is further off needs no square of its own.
        FullFrom = (long)Math.Ceiling((widthPixels + 0.5) * pixelWidth * (widthPixels + 0.5) * pixelWidth);
        table = [.. Enumerable.Range(0, FitsTable ? (int)FullFrom + 1 : 0).Select(s => Of(s))];
    }

    /// <summary>Least squared distance, in units, at which full is allowed.</summary>
    public long FullFrom { get; }

    /// <summary>Whether squares up to there, and one that stands for further away, fit 16 bits.</summary>
    public bool FitsShort => FullFrom < ushort.MaxValue;

    /// <summary>Whether there is a table of all squares: up to four million of them.</summary>
    public bool FitsTable => FullFrom <= 4_000_000;

    /// <summary>What is allowed at each squared distance up to <see cref="FullFrom"/>; empty where there are too many.</summary>
    public ReadOnlySpan<ushort> Table => table;

    /// <summary>What is allowed at a squared distance.</summary>
    public ushort Of(long square) => square >= FullFrom
        ? Tile.Full
        : (ushort)Math.Clamp(Math.Floor((((Math.Sqrt(square) / pixelWidth) - 0.5) / widthPixels * Tile.Full) + 0.5), 0, Tile.Full);
}
