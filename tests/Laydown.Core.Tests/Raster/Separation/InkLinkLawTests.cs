using Laydown.Colour.Inversion;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Separation;

/// <summary>Links against double arithmetic, against themselves at other widths, and what they must keep.</summary>
public sealed class InkLinkLawTests
{
    public static TheoryData<int, int, int, double> Links() => new()
    {
        { 3, 2, 7, 1 }, { 3, 6, 8, 1.4 }, { 3, 17, 1, 1 }, { 3, 33, 7, 1 }, { 3, 33, 4, 0.7 }, { 4, 2, 6, 1 }, { 4, 6, 7, 1.4 }, { 4, 9, 8, 1 }, { 4, 17, 5, 1.4 },
    };

    [Theory, MemberData(nameof(Links))]
    public void All_widths_give_the_same_for_rows_of_any_length(int channels, int steps, int inks, double bend)
    {
        LinkTables link = Random(channels, steps, inks, bend);
        foreach (int columns in new[] { 1, 15, 16, 17, 255, 256, 257, 300 })
        {
            Tile source = Pixels(channels, steps, 5, columns);
            ushort[] plain = Values(link, Lanes.Plain, source);
            foreach (Lanes lanes in LanesHere.All)
                Assert.Equal(plain, Values(link, lanes, source));
        }
    }

    /// <summary>
    /// A place is rounded to 1/16384 of a cell, on a straight way to a quarter more: three codes of 65535 for each channel where neighbouring nodes lie bare and
    /// full; half a code for nodes of 16 bits, one for rounding down. 13 codes of 65535 are a twentieth of a code of 255.
    /// </summary>
    [Theory, MemberData(nameof(Links))]
    public void Lies_within_thirteen_codes_of_65535_of_double_arithmetic(int channels, int steps, int inks, double bend)
    {
        LinkTables link = Random(channels, steps, inks, bend);
        Tile source = Pixels(channels, steps, 20, 257);
        ushort[] made = Values(link, LanesHere.Best, source);
        double worst = 0;
        for (int pixel = 0; pixel < 20 * 257; pixel++)
        {
            double[] exact = Exact(link, [.. Enumerable.Range(0, channels).Select(c => source.Row(c, pixel / 257)[pixel % 257] / 65535.0)]);
            for (int ink = 0; ink < inks; ink++)
                worst = Math.Max(worst, Math.Abs(made[(ink * 20 * 257) + pixel] - (exact[ink] * 65535)));
        }

        Assert.InRange(worst, 0, 13);
    }

    [Theory]
    [InlineData(3, 2)]
    [InlineData(3, 6)]
    [InlineData(3, 16)]
    [InlineData(4, 4)]
    [InlineData(4, 6)]
    public void A_node_gives_its_own_code(int channels, int steps)
    {
        // 65535 is a whole multiple of these numbers of cells: every node is a code.
        LinkTables link = Random(channels, steps, 7, 1);
        int nodes = link.Table.Count / 7;
        Tile source = new(channels, 1, nodes);
        for (int node = 0; node < nodes; node++)
        {
            for (int channel = channels - 1, rest = node; channel >= 0; channel--, rest /= steps)
                source.Row(channel, 0)[node] = (ushort)(rest % steps * (65535 / (steps - 1)));
        }

        foreach (Lanes lanes in LanesHere.All)
        {
            ushort[] made = Values(link, lanes, source);
            for (int i = 0; i < made.Length; i++)
                Assert.Equal((ushort)Math.Round(link.Table[(i % nodes * 7) + (i / nodes)] * 65535), made[i]);
        }
    }

    [Theory]
    [InlineData(3, 9)]
    [InlineData(4, 5)]
    public void What_the_nodes_keep_every_pixel_keeps(int channels, int steps)
    {
        const double Most = 0.83, Total = 2.6;
        LinkTables free = Random(channels, steps, 7, 1.4);
        float[] table = [.. free.Table];
        for (int node = 0; node < table.Length; node += 7)
        {
            Span<float> inks = table.AsSpan(node, 7);
            double sum = 0;
            foreach (ref float ink in inks)
                sum += ink *= (float)Most;
            foreach (ref float ink in inks)
                ink = (float)(ink * Math.Min(1, (Total - 1e-5) / sum));
        }

        Tile source = Pixels(channels, steps, 30, 200);
        ushort[] made = Values(free with { Table = table }, LanesHere.Best, source);
        for (int pixel = 0; pixel < 30 * 200; pixel++)
        {
            long sum = 0;
            for (int ink = 0; ink < 7; ink++)
            {
                Assert.True(made[(ink * 30 * 200) + pixel] <= Most * Tile.Full);
                sum += made[(ink * 30 * 200) + pixel];
            }

            Assert.True(sum <= Total * Tile.Full);
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void Flat_nodes_give_flat_inks(int channels)
    {
        LinkTables link = Random(channels, 5, 3, 1.4);
        float[] tints = [0, 12345 / 65535f, 1];
        Tile source = Pixels(channels, 5, 3, 100);
        ushort[] made = Values(link with { Table = [.. link.Table.Select((_, i) => tints[i % 3])] }, LanesHere.Best, source);
        Assert.All(made.Index(), m => Assert.Equal(m.Index / 300 == 0 ? 0 : m.Index / 300 == 1 ? 12345 : 65535, m.Item));
    }

    /// <summary>Codes anywhere, both ends, nodes and their neighbours, and greys.</summary>
    internal static Tile Pixels(int channels, int steps, int rows, int columns)
    {
        Tile tile = new(channels, rows, columns);
        for (int row = 0; row < rows; row++)
        {
            for (int x = 0; x < columns; x++)
            {
                uint kind = Picture.Hash(3, 0, row, x) % 6;
                for (int channel = 0; channel < channels; channel++)
                {
                    uint chance = Picture.Hash(7, kind == 0 ? 0 : channel, row, x);
                    double node = 65535.0 * (chance % steps) / (steps - 1);
                    tile.Row(channel, row)[x] = kind switch
                    {
                        1 => (chance & 1) == 0 ? (ushort)0 : Tile.Full,
                        2 => (ushort)Math.Round(node),
                        3 => (ushort)Math.Clamp(Math.Round(node) + (chance >> 8) % 3 - 1, 0, Tile.Full),
                        _ => (ushort)chance,
                    };
                }
            }
        }

        return tile;
    }

    internal static LinkTables Random(int channels, int steps, int inks, double bend)
    {
        Random chance = new(channels + (10 * steps) + inks);
        float[] table = new float[(int)Math.Pow(steps, channels) * inks];
        for (int i = 0; i < table.Length; i++)
            table[i] = chance.Next(8) switch { 0 => 0, 1 => 1, _ => chance.Next(65536) / 65535f };
        float[] curve = bend == 1 ? [0, 1] : [.. Enumerable.Range(0, 257).Select(i => (float)Math.Pow(i / 256.0, 1 / bend))];
        return new(
            channels, [.. Enumerable.Range(0, inks).Select(i => Invariant($"Ink {i}"))], [.. Enumerable.Repeat<IReadOnlyList<float>>(curve, channels)], steps, table);
    }

    private static ushort[] Values(LinkTables link, Lanes lanes, Tile source)
    {
        Tile target = new(link.InkNames.Count, source.Rows, source.Columns);
        new InkLink(link, lanes).Run(source, target);
        List<ushort> values = [];
        for (int ink = 0; ink < target.Inks; ink++)
        {
            for (int row = 0; row < target.Rows; row++)
                values.AddRange(target.Row(ink, row));
        }

        return [.. values];
    }

    // The inks are the lowest corner and, for each channel in the order of the parts, its part of the way to the next corner.
    private static double[] Exact(LinkTables link, double[] channels)
    {
        double[] places = [.. channels.Select((c, i) => Along(link.PreCurves[i], c) * (link.Steps - 1))];
        int[] cells = [.. places.Select(p => Math.Min((int)p, link.Steps - 2))];
        double[] parts = [.. places.Zip(cells, (p, c) => p - c)];
        double[] inks = Node(link, cells);
        foreach (int channel in Enumerable.Range(0, channels.Length).OrderByDescending(c => parts[c]))
        {
            double[] from = Node(link, cells);
            cells[channel]++;
            double[] to = Node(link, cells);
            for (int ink = 0; ink < inks.Length; ink++)
                inks[ink] += parts[channel] * (to[ink] - from[ink]);
        }

        return inks;
    }

    private static double[] Node(LinkTables link, int[] cells)
    {
        int node = cells.Aggregate(0, (n, c) => (n * link.Steps) + c), inks = link.InkNames.Count;
        return [.. Enumerable.Range(0, inks).Select(i => (double)link.Table[(node * inks) + i])];
    }

    private static double Along(IReadOnlyList<float> curve, double value)
    {
        double along = value * (curve.Count - 1);
        int step = Math.Min((int)along, curve.Count - 2);
        return curve[step] + ((curve[step + 1] - curve[step]) * (along - step));
    }
}
