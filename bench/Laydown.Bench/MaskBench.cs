using System.Security.Cryptography;
using Laydown.Raster.Masks;
using Laydown.Raster.Tiles;
using NetVips;

namespace Laydown.Bench;

/// <summary>Masks of white, clear and block-out beside libvips on the same mask: erosion by a disc (morph), and distances (fill_nearest), which feathers rest on.</summary>
/// <remarks>Ours in tiles of 256 × 2048 with their margins, one thread, best of three; libvips on a part of the mask, with one thread and without its cache.</remarks>
internal static class MaskBench
{
    private const int TileRows = 256, TileColumns = 2048, Part = 1024;

    /// <summary>Runs all rows.</summary>
    public static IEnumerable<RasterRow> Run(RasterPictures pictures, CancellationToken cancellation)
    {
        byte[] mask = Mask(pictures);
        string variant = Invariant($"mask {mask.Average(v => v / 2.55):0} % full, {pictures.Width} × {pictures.Height}");
        (double morph, double nearest) = Libvips(mask, pictures.Width, Math.Min(Part, Math.Min(pictures.Width, pictures.Height)));
        foreach (Lanes lanes in LanesHere.All.Where(l => l != Lanes.Plain))
        {
            string at = Invariant($"{variant}, {lanes}");
            yield return Row("choke 8 px", at, new Choke(8, null, lanes), pictures, mask, "libvips morph, disc of 8 px", morph, "1000 Mpx/s", cancellation);
            yield return Row("choke 85 px", at, new Choke(85, null, lanes), pictures, mask, "libvips fill_nearest", nearest, "1000 Mpx/s", cancellation);
            yield return Row("spread 8 px", at, new Choke(-8, null, lanes), pictures, mask, null, null, null, cancellation);
            yield return Row("feather 32 px", at, new Feather(32, true, null, lanes), pictures, mask, "libvips fill_nearest", nearest, "500 Mpx/s", cancellation);
            yield return Row("least feature 9 px", at, new MinFeature(9, null, lanes), pictures, mask, null, null, null, cancellation);
            yield return Row("choke 8 px of a grey mask", at, new Choke(8, null, lanes), pictures, Soft(mask), null, null, null, cancellation);
            yield return Row("choke 85 px of a grey mask", at, new Choke(85, null, lanes), pictures, Soft(mask), null, null, null, cancellation);
        }
    }

    private static RasterRow Row(
        string stage, string variant, ITileStage run, RasterPictures pictures, byte[] mask, string? beside, double? besideMpxPerS, string? wanted,
        CancellationToken cancellation)
    {
        double best = double.MaxValue;
        string checksum = "";
        for (int round = 0; round < 3; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            (double seconds, checksum) = Once(run, pictures, mask);
            best = Math.Min(best, seconds);
        }

        return new(stage, variant, mask.Length / best / 1e6, beside, besideMpxPerS, null, wanted, checksum);
    }

    // Only the stage is timed; cutting the mask in tiles is the engine's work.
    private static (double Seconds, string Checksum) Once(ITileStage run, RasterPictures pictures, byte[] mask)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        MaskSource source = new(mask, pictures.Width, pictures.Height);
        Tile from = new(1, 1, 1), to = new(1, 1, 1);
        double seconds = 0;
        for (int row = 0; row < pictures.Height; row += TileRows)
        {
            for (int column = 0; column < pictures.Width; column += TileColumns)
            {
                to.Shape(1, Math.Min(TileRows, pictures.Height - row), Math.Min(TileColumns, pictures.Width - column));
                to.PlaceAt(row, column);
                from.Shape(1, to.Rows + (2 * run.ReachPixels), to.Columns + (2 * run.ReachPixels));
                from.PlaceAt(row - run.ReachPixels, column - run.ReachPixels);
                SourceTile.Fill(source, from);
                double start = ProcessMeter.ThreadSeconds();
                run.Run(from, to);
                seconds += ProcessMeter.ThreadSeconds() - start;
                for (int y = 0; y < to.Rows; y++)
                    hash.AppendData(System.Runtime.InteropServices.MemoryMarshal.AsBytes(to.Row(0, y)));
            }
        }

        return (seconds, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    /// <summary>Million pixels a second of processor time: erosion by a disc of 8 pixels, and distances.</summary>
    private static (double Morph, double Nearest) Libvips(byte[] mask, int width, int side)
    {
        Cache.Max = 0;
        NetVips.NetVips.Concurrency = 1;
        using Image whole = Image.NewFromMemory(mask, width, mask.Length / width, 1, Enums.BandFormat.Uchar);
        using Image part = whole.Crop(0, 0, side, side).CopyMemory();
        using Image disc = Image.NewFromArray(Disc(8));
        using Image inverse = part.Invert().CopyMemory();
        double morph = BestOfTwo(() =>
        {
            using Image eroded = part.Morph(disc, Enums.OperationMorphology.Erode);
            eroded.WriteToMemory<byte>();
        });
        double nearest = BestOfTwo(() =>
        {
            using Image filled = inverse.FillNearest(out Image distance);
            using (distance)
                distance.WriteToMemory<float>();
        });
        double megapixels = side * (double)side / 1e6;
        return (megapixels / morph, megapixels / nearest);
    }

    private static double BestOfTwo(Action work)
    {
        double best = double.MaxValue;
        for (int round = 0; round < 2; round++)
        {
            double start = ProcessMeter.ProcessSeconds();
            work();
            best = Math.Min(best, ProcessMeter.ProcessSeconds() - start);
        }

        return best;
    }

    // 255 must be full, 128 may be anything.
    private static double[,] Disc(int radius)
    {
        double[,] disc = new double[(2 * radius) + 1, (2 * radius) + 1];
        for (int y = -radius; y <= radius; y++)
        {
            for (int x = -radius; x <= radius; x++)
                disc[y + radius, x + radius] = (x * x) + (y * y) <= radius * radius ? 255 : 128;
        }

        return disc;
    }

    // Several masks over one another, so that about two thirds are left full.
    private static byte[] Mask(RasterPictures pictures)
    {
        byte[] mask = pictures.Mask();
        for (int seed = 4; mask.Average(v => v / 255.0) > 0.66; seed++)
        {
            byte[] other = pictures.Mask(seed);
            for (int i = 0; i < mask.Length; i++)
                mask[i] &= other[i];
        }

        return mask;
    }

    // Edges as scaling leaves them: the mean of three columns.
    private static byte[] Soft(byte[] mask)
    {
        byte[] soft = new byte[mask.Length];
        for (int i = 0; i < mask.Length; i++)
            soft[i] = (byte)((mask[Math.Max(0, i - 1)] + mask[i] + mask[Math.Min(mask.Length - 1, i + 1)]) / 3);
        return soft;
    }

    private sealed class MaskSource(byte[] mask, int width, int height) : ITileSource
    {
        public int Inks => 1;

        public int Rows => height;

        public int Columns => width;

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
        {
            for (int x = 0; x < into.Length; x++)
                into[x] = (ushort)(mask[(row * width) + firstColumn + x] * 257);
        }
    }
}
