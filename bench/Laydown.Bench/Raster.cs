using System.Security.Cryptography;
using System.Text;
using Laydown.Raster.Tiles;
using NetVips;

namespace Laydown.Bench;

/// <summary>The raster engine: each stage, then whole boards, beside general libraries on the same picture in the same call.</summary>
/// <remarks><c>--instances</c> names a folder of pictures, each measured; without it a picture of the bench's own.</remarks>
internal static class Raster
{
    private const int Side = 4096;

    /// <summary>Runs all.</summary>
    public static async Task<RasterResult> RunAsync(BenchArguments arguments, CancellationToken cancellation)
    {
        List<RasterRow> rows = [];
        List<BoardRow> boards = [];
        List<OverlapRow> pages = [];
        double chain = 0;
        foreach ((string name, RasterPictures pictures) in PicturesOf(arguments.Instances))
        {
            string folder = Directory.CreateTempSubdirectory("laydown-bench-").FullName;
            try
            {
                rows.AddRange(Stages(pictures, cancellation).Select(r => r with { Variant = Named(name, r.Variant) }));
                byte[] square = pictures.Natural();
                await File.WriteAllBytesAsync(Path.Combine(folder, "square.rgb"), square, cancellation);
                await File.WriteAllBytesAsync(Path.Combine(folder, "square.mask"), pictures.Mask(), cancellation);
                double chained = RasterChain.MpxPerS(Part(square, pictures.Width, 1138), 1138, folder, Environment.ProcessorCount, cancellation);
                chain = Math.Max(chain, chained);
                pages.AddRange((await OverlapBench.RunAsync(pictures, folder, cancellation)).Select(p => p with { What = Named(name, p.What) }));
                foreach ((string what, double height) in new[] { ("usual", 407.0), ("usual", 2440), ("usual", 2440), ("cold", 2440), ("two-bits", 2440) })
                {
                    BoardRow row = await RasterBoard.ChildAsync(what, folder, height, cancellation);
                    boards.Add(row with { What = Named(name, row.What) });
                }
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }

        return boards.Count > 0 ? Result(rows, boards, pages, chain) : throw new InvalidDataException(Invariant($"{arguments.Instances}: no picture that can be read."));
    }

    /// <summary>The stages alone, on the bench's own picture.</summary>
    public static IEnumerable<RasterRow> Stages(CancellationToken cancellation) => Stages(new(Side, Side), cancellation);

    private static IEnumerable<RasterRow> Stages(RasterPictures pictures, CancellationToken cancellation) =>
    [
        .. ColourKernelBench.Run(pictures, cancellation),
        .. ScaleBench.Run(pictures, cancellation),
        .. MaskBench.Run(pictures, cancellation),
        .. ScreenBench.Run(pictures, cancellation),
        .. WriteBench.Run(pictures, cancellation),
    ];

    private static RasterResult Result(IReadOnlyList<RasterRow> rows, IReadOnlyList<BoardRow> boards, IReadOnlyList<OverlapRow> pages, double chain)
    {
        BoardRow low = boards[0], high = boards.Where(b => b.What.EndsWith("usual", StringComparison.Ordinal)).MinBy(b => b.CpuSeconds / b.Gigapixels)!;
        high = boards.Where(b => b.Bits == 1 && b.Gigapixels > low.Gigapixels * 1.5).MinBy(b => b.Seconds) ?? high;
        string sums = string.Join('\n', rows.Select(r => r.Checksum).Concat(boards.Select(b => b.Checksum)));
        return new(
            "raster", LanesHere.Best.ToString(), rows, boards, pages, RasterChain.Words, chain, high.MpxPerS / chain,
            Math.Log(high.CpuSeconds / low.CpuSeconds) / Math.Log(high.Gigapixels / low.Gigapixels), boards.Sum(b => b.CpuSeconds), boards.Max(b => b.PeakMb),
            Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(sums))));
    }

    private static IEnumerable<(string Name, RasterPictures Pictures)> PicturesOf(string? folder)
    {
        if (folder is null)
        {
            yield return ("", new(Side, Side, null));
            yield break;
        }

        foreach (string path in Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal))
        {
            if (Loaded(path) is { } pictures)
                yield return (Path.GetFileName(path), pictures);
        }
    }

    // The picture as a square of the bench's side: repeated where it is smaller, cut where it is larger.
    private static RasterPictures? Loaded(string path)
    {
        try
        {
            using Image image = Image.NewFromFile(path);
            using Image rgb = image.Colourspace(Enums.Interpretation.Srgb).Cast(Enums.BandFormat.Uchar);
            using Image three = rgb.HasAlpha() ? rgb.Flatten(background: [255, 255, 255]) : rgb;
            using Image square = three.ExtractBand(0, n: 3).Replicate((Side / image.Width) + 1, (Side / image.Height) + 1).Crop(0, 0, Side, Side);
            return new(Side, Side, square.WriteToMemory<byte>());
        }
        catch (VipsException)
        {
            Console.Error.WriteLine(Invariant($"{Path.GetFileName(path)}: no picture that can be read; left out."));
            return null;
        }
    }

    private static string Named(string name, string what) => name.Length == 0 ? what : Invariant($"{name}: {what}");

    private static byte[] Part(byte[] rgb, int width, int side)
    {
        byte[] part = new byte[side * side * 3];
        for (int row = 0; row < side; row++)
            rgb.AsSpan(row * width * 3, side * 3).CopyTo(part.AsSpan(row * side * 3));
        return part;
    }
}
