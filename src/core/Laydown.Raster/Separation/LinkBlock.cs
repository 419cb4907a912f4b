namespace Laydown.Raster.Separation;

/// <summary>Memory of one run of a link: pixels of one row, at most <see cref="Most"/>, on their way from codes to inks. What it holds stays in the first cache.</summary>
internal readonly unsafe ref struct LinkBlock
{
    /// <summary>Pixels of a block.</summary>
    public const int Most = 256;

    /// <summary>Pixels a kernel takes at once; a shorter end of a row is made up to it.</summary>
    public const int Step = 16;

    /// <summary>Corners at most.</summary>
    public const int Corners = 5;

    /// <summary>Pairs of corners at most.</summary>
    public const int MostPairs = 3;

    private readonly int* places, at, pairs;
    private readonly ushort* spareFrom, spareTo;

    /// <summary>A block over memory of the caller's.</summary>
    public LinkBlock(int* places, int* at, int* pairs, ushort** from, ushort** to, ushort* spareFrom, ushort* spareTo)
    {
        this.places = places;
        this.at = at;
        this.pairs = pairs;
        From = from;
        To = to;
        this.spareFrom = spareFrom;
        this.spareTo = spareTo;
    }

    /// <summary>The pixels in each channel's row.</summary>
    public ushort** From { get; }

    /// <summary>The pixels in each ink's row; eight, those past the last ink to throw away.</summary>
    public ushort** To { get; }

    /// <summary>Place of each pixel of a channel.</summary>
    public int* PlacesOf(int channel) => places + (channel * Most);

    /// <summary>Value of the table where the node of a corner starts, for each pixel.</summary>
    public int* AtOf(int corner) => at + (corner * Most);

    /// <summary>Weights of two corners in one number, the first in its lower half, for each pixel.</summary>
    public int* PairsOf(int pair) => pairs + (pair * Most);

    /// <summary>Room for the end of a channel's row.</summary>
    public ushort* SpareFrom(int channel) => spareFrom + (channel * Most);

    /// <summary>Room for the end of an ink's row, or for one to throw away.</summary>
    public ushort* SpareTo(int ink) => spareTo + (ink * Most);

    /// <summary>Goes on to the next pixels.</summary>
    public void Advance(int channels, int inks, int pixels)
    {
        for (int channel = 0; channel < channels; channel++)
            From[channel] += pixels;
        for (int ink = 0; ink < inks; ink++)
            To[ink] += pixels;
    }
}
