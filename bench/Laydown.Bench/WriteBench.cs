using System.Security.Cryptography;
using BitMiracle.LibTiff.Classic;
using Laydown.Formats.TiffWriting;
using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;
using Microsoft.Win32.SafeHandles;
using NetVips;
using DotPacking = Laydown.Formats.TiffWriting.DotPacking;

namespace Laydown.Bench;

/// <summary>A screened plane written as dot TIFF, packed in each way, beside the same bytes written raw, LibTiff.NET and libvips.</summary>
/// <remarks>
/// Processor time with that of the system, one thread, best of several; into memory of the system, not through to the disk. Ours hashes
/// each strip besides. libvips is given a byte for each dot, as it keeps pictures, and packs the bits itself. Deflate at level 1 in all.
/// Every file is read back and must hold the same dots.
/// </remarks>
internal static class WriteBench
{
    private const int StripRows = 256, Repeats = 4, Runs = 5, RunsOfLibraries = 3;

    /// <summary>Runs all rows. Rates are dots.</summary>
    public static IEnumerable<RasterRow> Run(RasterPictures pictures, CancellationToken cancellation)
    {
        string folder = Directory.CreateTempSubdirectory("laydown-bench-").FullName;
        try
        {
            foreach (DropLevels drops in (DropLevels[])[DropLevels.One, new([6, 12, 24])])
            {
                DotRows plane = Plane(pictures, drops);
                using Image bytes = Bytes(plane);
                foreach (DotPacking packing in Enum.GetValues<DotPacking>())
                {
                    cancellation.ThrowIfCancellationRequested();
                    foreach (RasterRow row in Rows(plane, bytes, packing, Path.Combine(folder, "dots.tif")))
                        yield return row;
                }
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<RasterRow> Rows(DotRows plane, Image bytes, DotPacking packing, string path)
    {
        DotHeader header = new(
            plane.Columns, plane.Rows * Repeats, plane.BitsPerDot, RasterSheet.Dpi, RasterSheet.Dpi, StripRows, packing, "black", "bench");
        byte[][] strips = [.. Enumerable.Range(0, header.Strips).Select(s => Strip(plane, header, s))];
        double ours = Best(Runs, path, ProcessMeter.ThreadSeconds, () => Ours(path, header, strips));
        string sum = SumOfDots(path);
        byte[] file = File.ReadAllBytes(path);
        double raw = Best(Runs, path, ProcessMeter.ThreadSeconds, () => Raw(path, file, header.BytesOf(0)));
        yield return Row("the same bytes raw", raw, file.Length);
        double tiff = Best(RunsOfLibraries, path, ProcessMeter.ThreadSeconds, () => LibTiff(path, header, strips));
        yield return Row("LibTiff.NET", tiff, new FileInfo(path).Length);
        double vips = Best(RunsOfLibraries, path, ProcessMeter.ProcessSeconds, () => Libvips(path, bytes, header));
        yield return Row("libvips tiffsave", vips, new FileInfo(path).Length);

        RasterRow Row(string beside, double seconds, long besideBytes)
        {
            if (SumOfDots(path) != sum)
                throw new InvalidOperationException(Invariant($"{beside}, {packing}: other dots were written."));
            double dots = (double)header.Columns * header.Rows / 1e6;
            double plain = strips.Sum(s => (long)s.Length) / 1e6;
            string variant = Invariant(
                $"{plane.BitsPerDot} bit, {header.Columns} x {header.Rows}, {plain:0.00} MB of dots, {file.Length / 1e6:0.00} MB on file");
            string other = Invariant($"{beside}, {besideBytes / 1e6:0.00} MB");
            return new(Invariant($"write dots, {packing}"), variant, dots / ours, other, dots / seconds, null, null, sum);
        }
    }

    private static void Ours(string path, DotHeader header, byte[][] strips)
    {
        using DotTiffWriter writer = DotTiffWriter.Create(path, header);
        for (int strip = 0; strip < strips.Length; strip++)
            writer.Write(strip, strips[strip]);
        writer.Finish();
    }

    // From front to back in blocks as long as a strip, in a file that has its length from the start.
    private static void Raw(string path, byte[] bytes, int block)
    {
        using SafeFileHandle file = File.OpenHandle(
            path, FileMode.Create, FileAccess.Write, FileShare.None, FileOptions.None, bytes.Length);
        for (int at = 0; at < bytes.Length; at += block)
            RandomAccess.Write(file, bytes.AsSpan(at, Math.Min(block, bytes.Length - at)), at);
    }

    private static void LibTiff(string path, DotHeader header, byte[][] strips)
    {
        using Tiff tiff = Tiff.Open(path, "w8") ?? throw Failed("opening");
        Set(TiffTag.IMAGEWIDTH, header.Columns);
        Set(TiffTag.IMAGELENGTH, header.Rows);
        Set(TiffTag.BITSPERSAMPLE, header.BitsPerDot);
        Set(TiffTag.SAMPLESPERPIXEL, 1);
        Set(TiffTag.PHOTOMETRIC, Photometric.MINISWHITE);
        Set(TiffTag.ROWSPERSTRIP, header.RowsPerStrip);
        Set(TiffTag.COMPRESSION, header.Packing switch
        {
            DotPacking.None => Compression.NONE,
            DotPacking.PackBits => Compression.PACKBITS,
            _ => Compression.ADOBE_DEFLATE,
        });
        if (header.Packing == DotPacking.Deflate)
            Set(TiffTag.ZIPQUALITY, 1);
        for (int strip = 0; strip < strips.Length; strip++)
        {
            if (tiff.WriteEncodedStrip(strip, strips[strip], strips[strip].Length) < 0)
                throw Failed(Invariant($"strip {strip}"));
        }

        void Set(TiffTag tag, object value)
        {
            if (!tiff.SetField(tag, value))
                throw Failed(tag.ToString());
        }

        static InvalidOperationException Failed(string step) => new(Invariant($"LibTiff.NET failed at {step}."));
    }

    private static void Libvips(string path, Image bytes, DotHeader header) => bytes.Tiffsave(
        path,
        compression: header.Packing switch
        {
            DotPacking.None => Enums.ForeignTiffCompression.None,
            DotPacking.PackBits => Enums.ForeignTiffCompression.Packbits,
            _ => Enums.ForeignTiffCompression.Deflate,
        },
        bitdepth: header.BitsPerDot, bigtiff: true, miniswhite: true, predictor: Enums.ForeignTiffPredictor.None,
        level: header.Packing == DotPacking.Deflate ? 1 : null);

    // The file goes before each run, so that none pays for the one before it.
    private static double Best(int runs, string path, Func<double> clock, Action write)
    {
        double best = double.MaxValue;
        for (int run = 0; run < runs; run++)
        {
            File.Delete(path);
            double start = clock();
            write();
            best = Math.Min(best, clock() - start);
        }

        return best;
    }

    private static string SumOfDots(string path)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using DotTiffReader reader = DotTiffReader.Open(path).Value;
        byte[] line = new byte[reader.BytesFor(reader.Columns)];
        for (int row = 0; row < reader.Rows; row++)
        {
            reader.ReadRow(row, 0, reader.Columns, line);
            hash.AppendData(line);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset())[..16];
    }

    // The plane several times over, one below the other; its rows are a multiple of a strip's.
    private static byte[] Strip(DotRows plane, DotHeader header, int strip)
    {
        int first = strip * StripRows % plane.Rows;
        return plane.Plane(0).Slice(first * plane.Stride, header.BytesOf(strip)).ToArray();
    }

    // Black of the picture's green, by the array of the product.
    private static DotRows Plane(RasterPictures pictures, DropLevels drops)
    {
        byte[] rgb = pictures.Natural();
        int rows = pictures.Height / StripRows * StripRows;
        ILayerScreen screen = LayerScreens.Of([new("black", 1, null)], drops, ScreenKind.Arrays);
        DotRows plane = new(1, rows, pictures.Width, drops.BitsPerDot), band = new(1, StripRows, pictures.Width, drops.BitsPerDot);
        Tile tile = new(1, StripRows, pictures.Width);
        for (int top = 0; top < rows; top += StripRows)
        {
            tile.PlaceAt(top, 0);
            for (int row = 0; row < StripRows; row++)
            {
                Span<ushort> line = tile.Row(0, row);
                for (int column = 0; column < line.Length; column++)
                    line[column] = (ushort)((255 - rgb[((((top + row) * pictures.Width) + column) * 3) + 1]) * 257);
            }

            screen.Run(tile, StripRows, pictures.Width, band, 0);
            band.Plane(0).CopyTo(plane.Plane(0)[(top * plane.Stride)..]);
        }

        return plane;
    }

    // White where bare, black where the largest drop lies: what a library calls 1 or 2 bits after saving.
    private static Image Bytes(DotRows plane)
    {
        Cache.Max = 0;
        NetVips.NetVips.Concurrency = 1;
        int most = (1 << plane.BitsPerDot) - 1;
        byte[] bytes = new byte[plane.Columns * plane.Rows];
        for (int at = 0; at < bytes.Length; at++)
            bytes[at] = (byte)(255 - (plane[0, at / plane.Columns, at % plane.Columns] * 255 / most));
        using Image one = Image.NewFromMemory(bytes, plane.Columns, plane.Rows, 1, Enums.BandFormat.Uchar);
        return one.Replicate(1, Repeats).CopyMemory();
    }
}
