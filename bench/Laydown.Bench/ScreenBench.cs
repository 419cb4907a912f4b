using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;
using NetVips;

namespace Laydown.Bench;

/// <summary>Screens of four inks in tiles that lie in the cache, beside libvips (an array compared, a 1-bit TIFF written), ImageMagick and Pillow on one ink.</summary>
internal static class ScreenBench
{
    private const int Columns = 2048, Inks = 4, Side = 2048, Runs = 9;

    /// <summary>Runs it. Rates are pixels of one ink.</summary>
    public static IEnumerable<RasterRow> Run(RasterPictures pictures, CancellationToken cancellation)
    {
        string folder = Directory.CreateTempSubdirectory("laydown-bench-").FullName;
        try
        {
            byte[] grey = Grey(pictures);
            File.WriteAllBytes(Path.Combine(folder, "grey.raw"), grey);
            double vips = Libvips(grey, Path.Combine(folder, "dots.tif"));
            double magick = ImageMagick(folder), pillow = Pillow(folder);
            foreach (ScreenKind kind in Enum.GetValues<ScreenKind>())
            {
                foreach (DropLevels drops in (DropLevels[])[DropLevels.One, new([6, 12, 24])])
                {
                    foreach (Lanes lanes in LanesHere.All)
                    {
                        cancellation.ThrowIfCancellationRequested();
                        yield return Row(kind, drops, lanes, grey, vips, magick, pillow);
                    }
                }
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static RasterRow Row(ScreenKind kind, DropLevels drops, Lanes lanes, byte[] grey, double vips, double magick, double pillow)
    {
        (double mpxPerS, string sum) = Ours(kind, drops, lanes, grey);
        (string beside, double rate, string wanted) = (kind, drops.BitsPerDot) switch
        {
            (ScreenKind.Diffusion, _) => ("Pillow convert to 1 bit", pillow, ">= 5 x the fastest library"),
            (_, 1) => ("libvips compare, 1-bit TIFF", vips, kind == ScreenKind.Arrays ? ">= 10 Gpx/s, >= 40 x libvips" : "no bottleneck"),
            _ => ("ImageMagick ordered dither 8 x 8, 4 levels, TIFF", magick, kind == ScreenKind.Arrays ? ">= 5 Gpx/s, >= 100 x ImageMagick" : "no bottleneck"),
        };
        return new(
            Invariant($"screen, {kind.ToString().ToLowerInvariant()}"), Invariant($"{drops.BitsPerDot} bit, 16-bit contone, {lanes}"), mpxPerS, beside,
            rate > 0 ? rate : null, null, wanted, sum);
    }

    private static (double MpxPerS, string Sum) Ours(ScreenKind kind, DropLevels drops, Lanes lanes, byte[] grey)
    {
        // Arrays in tiles that stay in the cache of a core; diffusion wants whole blocks.
        int rows = kind == ScreenKind.Diffusion ? DiffusionScreen.Block : 32;
        ILayerScreen screen = LayerScreens.Of(
            [new("black", 1, null), new("cyan", 0.6, null), new("magenta", 0.65, null), new("orange", 0.5, null)], drops, kind, lanes);
        int margin = screen.ReachPixels, rounds = lanes == Lanes.Plain ? 1 : 8;
        Tile tile = new(Inks, rows + (2 * margin), Columns + (2 * margin));
        tile.PlaceAt(-margin, -margin);
        for (int at = 0; at < Inks * tile.Rows; at++)
        {
            Span<ushort> line = tile.Row(at / tile.Rows, at % tile.Rows);
            for (int column = 0; column < line.Length; column++)
                line[column] = (ushort)((grey[((at % Side) * Side) + (column % Side)] * 257) ^ (column & 255));
        }

        DotRows dots = new(Inks, rows, Columns, drops.BitsPerDot);
        double best = double.MaxValue;
        for (int run = 0; run < Runs; run++)
        {
            double start = ProcessMeter.ThreadSeconds();
            for (int round = 0; round < rounds; round++)
                screen.Run(tile, rows, Columns, dots, 0);
            best = Math.Min(best, (ProcessMeter.ThreadSeconds() - start) / rounds);
        }

        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        for (int ink = 0; ink < Inks; ink++)
            hash.AppendData(dots.Plane(ink));
        return (1e-6 * Inks * rows * Columns / best, Convert.ToHexStringLower(hash.GetHashAndReset())[..16]);
    }

    // Processor time of the whole process: the library works on threads of its own.
    private static double Libvips(byte[] grey, string path)
    {
        Cache.Max = 0;
        NetVips.NetVips.Concurrency = 1;
        byte[] limits = [.. ThresholdArrays.Of(0).Ranks.Select(r => (byte)(r >> 8))];
        using Image picture = Image.NewFromMemory(grey, Side, Side, 1, Enums.BandFormat.Uchar);
        using Image array = Image.NewFromMemory(limits, ThresholdArray.Side, ThresholdArray.Side, 1, Enums.BandFormat.Uchar);
        using Image all = array.Replicate(Side / ThresholdArray.Side, Side / ThresholdArray.Side).CopyMemory();
        double best = double.MaxValue;
        for (int run = 0; run < 3; run++)
        {
            double start = ProcessMeter.ProcessSeconds();
            using Image dots = picture > all;
            dots.Tiffsave(path, bitdepth: 1);
            best = Math.Min(best, ProcessMeter.ProcessSeconds() - start);
        }

        return 1e-6 * Side * Side / best;
    }

    // Without reading: the same call that only writes the picture is taken off.
    private static double ImageMagick(string folder)
    {
        string[] from = ["-size", Invariant($"{Side}x{Side}"), "-depth", "8", "gray:grey.raw"];
        double whole = Child(folder, "convert", [.. from, "-ordered-dither", "o8x8,4", "-depth", "2", "dots.tif"], out _);
        double read = Child(folder, "convert", [.. from, "-depth", "8", "null:"], out _);
        return whole > read ? 1e-6 * Side * Side / (whole - read) : 0;
    }

    // The library times its own call, so that starting Python does not count.
    private static double Pillow(string folder)
    {
        const string script = "import time\nfrom PIL import Image\ni=Image.frombytes('L',(SIDE,SIDE),open('grey.raw','rb').read())\nb=9\n"
            + "for n in range(5):\n s=time.process_time();i.convert('1');b=min(b,time.process_time()-s)\nprint(b)";
        double seconds = Child(folder, "/usr/bin/python3", ["-c", script.Replace("SIDE", Invariant($"{Side}"), StringComparison.Ordinal)], out string said);
        return seconds > 0 && double.TryParse(said, NumberStyles.Float, CultureInfo.InvariantCulture, out double best) ? 1e-6 * Side * Side / best : 0;
    }

    // Processor time of a program and of waiting for it, best of three, s; 0 where there is no such program or it fails.
    private static double Child(string folder, string program, string[] arguments, out string said)
    {
        said = "";
        double best = double.MaxValue;
        for (int run = 0; run < 3; run++)
        {
            double start = ProcessMeter.CpuSeconds();
            try
            {
                ProcessStartInfo call = new(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
                using Process child = Process.Start(call)!;
                said = child.StandardOutput.ReadToEnd();
                child.WaitForExit();
                if (child.ExitCode != 0)
                    return 0;
                best = Math.Min(best, ProcessMeter.CpuSeconds() - start);
            }
            catch (System.ComponentModel.Win32Exception)
            {
                return 0;
            }
        }

        return best;
    }

    private static byte[] Grey(RasterPictures pictures)
    {
        byte[] rgb = pictures.Natural(), grey = new byte[Side * Side];
        for (int at = 0; at < grey.Length; at++)
            grey[at] = rgb[((((at / Side) % pictures.Height * pictures.Width) + ((at % Side) % pictures.Width)) * 3) + 1];
        return grey;
    }
}
