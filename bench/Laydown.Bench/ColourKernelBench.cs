using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Laydown.Colour.Inversion;
using Laydown.Formats.Icc;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Bench;

/// <summary>Links from RGB and CMYK to seven inks beside Little CMS running the same link, and the stages that look at one pixel alone.</summary>
/// <remarks>
/// 16 bits in and out. Little CMS gets the link as a device link and makes its own table of as many nodes along each channel; its cache of one pixel is off.
/// Processor time of one thread, best of several. Errors are against the same way through the cells in double arithmetic, over a part of the picture.
/// </remarks>
internal static class ColourKernelBench
{
    private const int Rows = 256, Columns = 2048, Runs = 7, PlainRuns = 2;

    private static readonly string[] Names = ["Cyan", "Magenta", "Yellow", "Black", "Light Cyan", "Light Magenta", "Light Black"];

    /// <summary>Runs it.</summary>
    public static IEnumerable<RasterRow> Run(RasterPictures pictures, CancellationToken cancellation)
    {
        foreach ((string kind, byte[] picture) in new[] { ("natural", pictures.Natural()), ("noise", pictures.Noise()) })
        {
            foreach ((int channels, int steps) in new[] { (3, 33), (3, 65), (4, 17) })
            {
                LinkTables link = Link(channels, steps);
                Tile source = Source(picture, pictures, channels);
                double beside = LittleMpxPerS(link, source);
                foreach (Lanes lanes in LanesHere.All)
                {
                    cancellation.ThrowIfCancellationRequested();
                    yield return Row(link, lanes, source, kind, beside);
                }
            }
        }

        Tile inks = new(7, Rows, Columns);
        new InkLink(Link(3, 33)).Run(Source(pictures.Natural(), pictures, 3), inks);
        InkCurve curve = InkCurve.Through([0, 18, 41, 67, 100], 95);
        foreach (Lanes lanes in LanesHere.All.Where(l => l != Lanes.Wide512))
        {
            yield return Stage("limit of each ink", new PerInkLimit([95, 95, 95, 90, 100, 100, 100], lanes), inks, lanes);
            yield return Stage("total limit, as in use", new TotalInkLimit(260, 3, lanes), inks, lanes);
            yield return Stage("total limit, most pixels over", new TotalInkLimit(30, 3, lanes), inks, lanes);
        }

        yield return Stage("ink curves", new InkCurves([.. Names.Select(_ => curve)]), inks, Lanes.Plain);
    }

    private static RasterRow Row(LinkTables link, Lanes lanes, Tile source, string kind, double beside)
    {
        InkLink stage = new(link, lanes);
        Tile target = new(Names.Length, Rows, Columns);
        double seconds = Best(() => stage.Run(source, target), lanes == Lanes.Plain ? PlainRuns : Runs);
        bool rgb = link.Channels == 3;
        string wanted = !rgb ? ">= 10 x" : lanes == Lanes.Wide256 ? ">= 8 x (33)" : link.Steps == 33 ? ">= 10 x" : ">= 6 x";
        return new(
            Invariant($"{(rgb ? "RGB" : "CMYK")} to 7 inks, {link.Steps} nodes"), Invariant($"{kind}, 16 bits, {lanes}"), MpxPerS(seconds),
            Invariant($"Little CMS, table of {link.Steps} nodes, 16 bits"), beside, LinkError.Of(link, source, target), wanted, Sum(target));
    }

    private static RasterRow Stage(string name, ITileStage stage, Tile source, Lanes lanes)
    {
        Tile target = new(stage.TargetInks(source.Inks), Rows, Columns);
        double seconds = Best(() => stage.Run(source, target), Runs);
        return new(name, Invariant($"7 inks, 16 bits, {lanes}"), MpxPerS(seconds), null, null, null, null, Sum(target));
    }

    // The first picture rows that fill a tile; wrapped where the picture is narrower. The fourth channel is the first a few rows on.
    private static Tile Source(byte[] picture, RasterPictures pictures, int channels)
    {
        Tile tile = new(channels, Rows, Columns);
        for (int channel = 0; channel < channels; channel++)
        {
            for (int row = 0; row < Rows; row++)
            {
                Span<ushort> line = tile.Row(channel, row);
                int from = (row + (channel == 3 ? 5 : 0)) % pictures.Height * pictures.Width;
                for (int x = 0; x < Columns; x++)
                    line[x] = EightBits.Widened(picture[((from + (x % pictures.Width)) * 3) + (channel % 3)]);
            }
        }

        return tile;
    }

    // Six inks of the bench and a light black that follows black; from CMYK the four inks share with their light ones.
    private static LinkTables Link(int channels, int steps)
    {
        LinkTables six = RasterInks.Link(steps);
        List<float> table = [];
        if (channels == 3)
        {
            for (int node = 0; node < six.Table.Count; node += 6)
            {
                for (int ink = 0; ink < 6; ink++)
                    table.Add(six.Table[node + ink]);
                table.Add(six.Table[node + 3] / 2);
            }
        }
        else
        {
            int square = steps * steps;
            for (int node = 0; node < square * square; node++)
            {
                float Of(int place) => node / place % steps / (steps - 1f);
                (float c, float m, float y, float k) = (Of(square * steps), Of(square), Of(steps), Of(1));
                table.AddRange([c * c, m * m, y * (1 - (k / 2)), k * k, (c - (c * c)) * 2, (m - (m * m)) * 2, (k - (k * k)) * 2]);
            }
        }

        float[] straight = [0, 1];
        return new(channels, Names, [.. Enumerable.Repeat<IReadOnlyList<float>>(straight, channels)], steps, table);
    }

    private static double LittleMpxPerS(LinkTables link, Tile source)
    {
        IccProfile profile = IccProfile.Read("link.icc", DeviceLinkProfile.Write(link, "bench, invented", "none", "source", "inks")).Value;
        using IccTransform little = IccTransform.Codes(profile, null, IccIntent.Perceptual, false, link.Steps).Value;
        ushort[] from = new ushort[Rows * Columns * link.Channels], to = new ushort[Columns * Names.Length];
        for (int i = 0; i < from.Length; i++)
            from[i] = source.Row(i % link.Channels, i / link.Channels / Columns)[i / link.Channels % Columns];
        return MpxPerS(Best(
            () =>
            {
                for (int row = 0; row < Rows; row++)
                    little.Row(from.AsSpan(row * Columns * link.Channels, Columns * link.Channels), to);
            },
            Runs));
    }

    private static double Best(Action work, int runs)
    {
        double best = double.MaxValue;
        for (int i = 0; i < runs; i++)
        {
            double start = ProcessMeter.ThreadSeconds();
            work();
            best = Math.Min(best, ProcessMeter.ThreadSeconds() - start);
        }

        return best;
    }

    private static double MpxPerS(double seconds) => Rows * Columns / 1e6 / seconds;

    private static string Sum(Tile tile)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        for (int ink = 0; ink < tile.Inks; ink++)
        {
            for (int row = 0; row < tile.Rows; row++)
                hash.AppendData(MemoryMarshal.AsBytes(tile.Row(ink, row)));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
