using Laydown.Colour.Inversion;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Turns the channels of a picture into the inks of a print by a device link: the place of light-ink split and black in one table.</summary>
/// <remarks>
/// Simplex interpolation: along the diagonal of the cell in the order of the channels' parts, so greys stay on their axis; five nodes a
/// pixel from CMYK instead of sixteen. Nodes keep the limits and a mean of nodes keeps them too, rounded down: the limits always hold.
/// Keeps nothing between tiles but the last pixel's answer of a row, as neighbours are often the same.
/// </remarks>
public sealed class InkLink : ITileStage
{
    private const int FractionBits = 15;
    private const int MostInks = 8;
    private readonly LinkTables link;
    private readonly float[] table;
    private readonly int[][] places;
    private readonly int[] strides;

    /// <summary>A stage for a link.</summary>
    /// <exception cref="ArgumentException">The link's numbers do not fit together.</exception>
    public InkLink(LinkTables link)
    {
        // The plain reader checks the numbers.
        _ = new LinkReader(link);
        int inks = link.InkNames.Count;
        if (inks > MostInks)
            throw new ArgumentException(Invariant($"{inks} inks: wanted at most {MostInks}."), nameof(link));
        this.link = link;
        int nodes = link.Table.Count / inks;
        table = new float[nodes * MostInks];
        for (int node = 0; node < nodes; node++)
            for (int ink = 0; ink < inks; ink++)
                table[(node * MostInks) + ink] = link.Table[(node * inks) + ink] * Tile.Full;
        places = [.. link.PreCurves.Select(Places)];
        strides = new int[link.Channels];
        for (int channel = link.Channels - 1, stride = MostInks; channel >= 0; channel--, stride *= link.Steps)
            strides[channel] = stride;
    }

    /// <summary>No neighbours needed: the stage looks at one pixel alone.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks == link.Channels
        ? link.InkNames.Count
        : throw new ArgumentException(Invariant($"Channels: found {sourceInks}; wanted {link.Channels}."), nameof(sourceInks));

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        ushort[] last = new ushort[link.Channels], answer = new ushort[target.Inks];
        for (int row = 0; row < source.Rows; row++)
        {
            bool known = false;
            for (int x = 0; x < source.Columns; x++)
            {
                bool same = known;
                for (int channel = 0; channel < last.Length; channel++)
                {
                    ushort value = source.Row(channel, row)[x];
                    same &= value == last[channel];
                    last[channel] = value;
                }

                if (!same)
                    Read(last, answer);
                known = true;
                for (int ink = 0; ink < answer.Length; ink++)
                    target.Row(ink, row)[x] = answer[ink];
            }
        }
    }

    private void Read(ReadOnlySpan<ushort> channels, Span<ushort> inks)
    {
        Span<int> part = stackalloc int[link.Channels], order = stackalloc int[link.Channels];
        int node = 0;
        for (int channel = 0; channel < channels.Length; channel++)
        {
            int place = places[channel][channels[channel]];
            node += (place >> FractionBits) * strides[channel];
            int inside = place & ((1 << FractionBits) - 1), at = channel;
            for (; at > 0 && part[at - 1] < inside; at--)
                (part[at], order[at]) = (part[at - 1], order[at - 1]);
            (part[at], order[at]) = (inside, channel);
        }

        // Walk from the lowest corner along the channels with the largest parts first; each step weighs what its part exceeds the next.
        Span<float> sum = stackalloc float[MostInks];
        Add(sum, node, (1 << FractionBits) - part[0]);
        for (int step = 0; step < part.Length; step++)
        {
            node += part[step] > 0 ? strides[order[step]] : 0;
            Add(sum, node, part[step] - (step + 1 < part.Length ? part[step + 1] : 0));
        }

        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = (ushort)(sum[ink] * (1f / (1 << FractionBits)));
    }

    private void Add(Span<float> sum, int node, int weight)
    {
        if (weight == 0)
            return;
        ReadOnlySpan<float> values = table.AsSpan(node, MostInks);
        for (int ink = 0; ink < MostInks; ink++)
            sum[ink] += weight * values[ink];
    }

    // For each of 65536 codes the cell and the part inside it, 15 bits.
    private int[] Places(IReadOnlyList<float> curve)
    {
        int[] found = new int[Tile.Full + 1];
        for (int code = 0; code < found.Length; code++)
        {
            double along = code / (double)Tile.Full * (curve.Count - 1);
            int step = Math.Min((int)along, curve.Count - 2);
            double value = curve[step] + ((curve[step + 1] - curve[step]) * (along - step));
            found[code] = (int)Math.Round(Math.Clamp(value, 0, 1) * (link.Steps - 1) * (1 << FractionBits));
        }

        return found;
    }
}
