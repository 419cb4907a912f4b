namespace Laydown.Raster.Separation;

/// <summary>The link one pixel after the other: what the wide kernels are held against.</summary>
internal static unsafe class LinkPlain
{
    private const int Half = 32768;

    /// <summary>Runs a block.</summary>
    /// <param name="link">The link.</param>
    /// <param name="table">Its first node.</param>
    /// <param name="block">Where the pixels are.</param>
    /// <param name="count">How many.</param>
    public static void Run(LinkNodes link, short* table, LinkBlock block, int count)
    {
        int* part = stackalloc int[link.Channels], step = stackalloc int[link.Channels];
        for (int x = 0; x < count; x++)
        {
            int node = 0;
            for (int channel = 0; channel < link.Channels; channel++)
            {
                int code = block.From[channel][x];
                int place = link.Curve(channel) is { } curve ? curve[code] : LinkNodes.Straight(code, link.Cells);
                node += (place >> LinkNodes.PartBits) * link.Strides[channel];
                int inside = place & (LinkNodes.Whole - 1), at = channel;
                for (; at > 0 && part[at - 1] < inside; at--)
                    (part[at], step[at]) = (part[at - 1], step[at - 1]);
                (part[at], step[at]) = (inside, link.Strides[channel]);
            }

            for (int ink = 0; ink < link.Inks; ink++)
                block.To[ink][x] = Mixed(table + node + ink, part, step, link.Channels);
        }
    }

    // Walks from the lowest corner along the channels with the largest parts first; each corner weighs what the part before it exceeds the next. Rounds down.
    private static ushort Mixed(short* node, int* part, int* step, int channels)
    {
        int sum = (LinkNodes.Whole - part[0]) * *node;
        for (int corner = 0; corner < channels; corner++)
        {
            node += step[corner];
            sum += (part[corner] - (corner + 1 < channels ? part[corner + 1] : 0)) * *node;
        }

        return (ushort)((sum >> LinkNodes.PartBits) + Half);
    }
}
