using System.Diagnostics;
using NetVips;

namespace Laydown.Bench;

/// <summary>The same work by a chain of a general image library: profile to inks, enlarging, white with a choke, comparing with a threshold array, files of one bit.</summary>
internal static class RasterChain
{
    /// <summary>What is done, in words.</summary>
    public const string Words = "libvips: icc_transform to six inks at 200 ppi, resize 3.6 cubic, white = any ink, morph erode with a disc of 8 pixels, relational less than a 256 x 256 array, tiffsave 1 bit";

    private const double Ratio = 3.6;
    private const int DiscPixels = 8;

    /// <summary>Million dots of one ink a second of wall time, best of two, on a square picture.</summary>
    /// <param name="rgb">Pixel after pixel.</param>
    /// <param name="side">Its side, pixels.</param>
    /// <param name="folder">For the files.</param>
    /// <param name="workers">Threads.</param>
    /// <param name="cancellation">Looked at before each run.</param>
    public static double MpxPerS(byte[] rgb, int side, string folder, int workers, CancellationToken cancellation)
    {
        Cache.Max = 0;
        NetVips.NetVips.Concurrency = workers;
        string profile = Path.Combine(folder, "bench.icc");
        File.WriteAllBytes(profile, RasterInks.Profile(33));
        double best = 0;
        for (int i = 0; i < 2; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            long start = Stopwatch.GetTimestamp();
            double dots = Run(rgb, side, folder, profile);
            best = Math.Max(best, dots / 1e6 / Stopwatch.GetElapsedTime(start).TotalSeconds);
        }

        return best;
    }

    private static double Run(byte[] rgb, int side, string folder, string profile)
    {
        using Image source = Image.NewFromMemory(rgb, side, side, 3, Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb);
        using Image inks = source.IccTransform(profile, intent: Enums.Intent.Relative, inputProfile: "srgb");

        // The inks at press resolution are read twice, by the screens and by the white: held in memory, as the library would compute them twice.
        using Image large = inks.Resize(Ratio, kernel: Enums.Kernel.Cubic).CopyMemory();
        using Image any = large.Bandbool(Enums.OperationBoolean.Or) > 2.0;
        using Image white = any.Morph(DiscMask(), Enums.OperationMorphology.Erode);
        using Image array = Image.NewFromMemory(Thresholds(), 256, 256, 1, Enums.BandFormat.Uchar)
            .Replicate((large.Width / 256) + 1, (large.Height / 256) + 1).Crop(0, 0, large.Width, large.Height);
        for (int ink = 0; ink < large.Bands; ink++)
            Save(large[ink], array, Path.Combine(folder, Invariant($"chain-{ink}.tif")));
        Save(white, array, Path.Combine(folder, "chain-white.tif"));
        foreach (string file in Directory.GetFiles(folder, "chain-*.tif"))
            File.Delete(file);
        return (double)large.Width * large.Height;
    }

    private static void Save(Image ink, Image array, string path)
    {
        using Image dots = ink.Relational(array, Enums.OperationRelational.More);
        dots.Tiffsave(path, bitdepth: 1, compression: Enums.ForeignTiffCompression.None, bigtiff: true);
    }

    private static Image DiscMask()
    {
        int side = (2 * DiscPixels) + 1;
        double[,] mask = new double[side, side];
        for (int y = 0; y < side; y++)
        {
            for (int x = 0; x < side; x++)
                mask[y, x] = ((y - DiscPixels) * (y - DiscPixels)) + ((x - DiscPixels) * (x - DiscPixels)) <= DiscPixels * DiscPixels ? 255 : 128;
        }

        return Image.NewFromArray(mask);
    }

    private static byte[] Thresholds()
    {
        byte[] array = new byte[256 * 256];
        new Random(5).NextBytes(array);
        return array;
    }
}
