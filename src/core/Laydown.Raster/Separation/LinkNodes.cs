using Laydown.Colour.Inversion;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>A link's numbers as the kernels read them: nodes of eight values of 16 bits, and the way from a channel's code to a place among the nodes.</summary>
/// <remarks>
/// A place counts 1/16384 of a cell. Nodes are kept less 32768, so that two products of a node and a weight add up within 32 bits, and rounded down, so
/// that they keep the limits as whole numbers. Behind the last node stand as many bare ones as a cell reaches: their weight is always 0.
/// </remarks>
internal sealed class LinkNodes
{
    /// <summary>Values of a node; those past the link's inks are 0.</summary>
    public const int MostInks = 8;

    /// <summary>Bits of a place inside a cell.</summary>
    public const int PartBits = 14;

    /// <summary>One whole cell.</summary>
    public const int Whole = 1 << PartBits;

    private const int Half = 32768;

    // A node that was a code of 16 bits before it became a single-precision number stays that code.
    private const double Dust = 1 / 256.0;

    private readonly int[]?[] curves;

    /// <summary>The numbers of a link that a <see cref="LinkReader"/> takes.</summary>
    public LinkNodes(LinkTables link)
    {
        (Channels, Inks, Cells) = (link.Channels, link.InkNames.Count, link.Steps - 1);
        int nodes = link.Table.Count / Inks, stride = 1;
        Strides = new int[Channels];
        for (int channel = Channels - 1; channel >= 0; channel--, stride *= link.Steps)
            Strides[channel] = stride * MostInks;
        Values = GC.AllocateArray<short>(checked(((nodes + 1) * MostInks) + Strides.Sum()), pinned: true);
        Lead = LeadOf(Values);
        for (int node = 0; node < nodes; node++)
        {
            for (int ink = 0; ink < Inks; ink++)
                Values[Lead + (node * MostInks) + ink] = (short)(Code(link.Table[(node * Inks) + ink]) - Half);
        }

        curves = [.. link.PreCurves.Select(c => IsStraight(c) ? null : Places(c))];
    }

    /// <summary>Channels that go in.</summary>
    public int Channels { get; }

    /// <summary>Inks that come out.</summary>
    public int Inks { get; }

    /// <summary>Cells along each channel.</summary>
    public int Cells { get; }

    /// <summary>All nodes, eight values each, less 32768; the first at <see cref="Lead"/>.</summary>
    public short[] Values { get; }

    /// <summary>Where the first node stands: at a whole 16 bytes of memory, so that no node lies across two lines of the cache.</summary>
    public int Lead { get; }

    /// <summary>Values from a node to the next along each channel.</summary>
    public int[] Strides { get; }

    /// <summary>The places of all 65536 codes of a channel, or null where the way is straight: then <see cref="Straight"/> gives them.</summary>
    public int[]? Curve(int channel) => curves[channel];

    /// <summary>The place of a code on a straight way: 0 at 0, the last node at 65535.</summary>
    public static int Straight(int code, int cells)
    {
        int along = code * cells;
        return (along + (along >> 16) + 2) >> 2;
    }

    private static int Code(float value) => (int)((Math.Clamp(value, 0, 1) * (double)Tile.Full) + Dust);

    // The pinned array never moves.
    private static unsafe int LeadOf(short[] values)
    {
        fixed (short* first = values)
            return (int)(((16 - ((nint)first & 15)) & 15) / sizeof(short));
    }

    // Straight to within half a code of 16 bits, as curves come out of profiles.
    private static bool IsStraight(IReadOnlyList<float> curve) =>
        curve.Index().All(c => Math.Abs(c.Item - (c.Index / (curve.Count - 1.0))) * Tile.Full <= 0.51);

    private int[] Places(IReadOnlyList<float> curve)
    {
        int[] found = new int[Tile.Full + 1];
        for (int code = 0; code < found.Length; code++)
        {
            double along = code / (double)Tile.Full * (curve.Count - 1);
            int step = Math.Min((int)along, curve.Count - 2);
            double value = curve[step] + ((curve[step + 1] - curve[step]) * (along - step));
            found[code] = (int)Math.Round(Math.Clamp(value, 0, 1) * Cells * Whole);
        }

        return found;
    }
}
