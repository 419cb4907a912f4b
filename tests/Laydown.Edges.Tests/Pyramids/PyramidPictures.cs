using Laydown.Edges.Tests.PressFiles;
using Laydown.Formats.TiffWriting;
using Laydown.Output.Pyramids;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.Pyramids;

/// <summary>Press files for tests of pyramids, written by the product's own writers, in a folder that goes away.</summary>
internal sealed class PyramidPictures : IDisposable
{
    public static readonly double[] Shares = [0, 0.25, 0.6, 1];

    private readonly string folder = Directory.CreateTempSubdirectory("laydown-pyramids-").FullName;

    public string Cache => Path.Combine(folder, "cache");

    public PressPlanes Planes => new(Cache);

    public PressFileAt Contone(int columns, int rows, int inks)
    {
        string path = Path.Combine(folder, Invariant($"contone-{columns}-{rows}-{inks}.tif"));
        ContoneHeader header = new(columns, rows, 120, [.. Enumerable.Range(1, inks).Select(i => Invariant($"Ink {i}"))], "Invented", null);
        using FileStream stream = new(path, FileMode.Create, FileAccess.ReadWrite);
        using ContoneTiffWriter writer = new(stream, "test", header);
        for (int row = 0; row < rows; row += writer.BandRows)
        {
            int high = Math.Min(writer.BandRows, rows - row);
            byte[] band = new byte[high * columns * inks];
            for (int at = 0; at < band.Length; at++)
                band[at] = Value(row + (at / inks / columns), at / inks % columns, at % inks);
            writer.WriteBand(band, high);
        }

        writer.Finish();
        return new(path, Invariant($"contone-{columns}-{rows}-{inks}"), []);
    }

    public PressFileAt Dots(int columns, int rows, int bits, DotPacking packing = DotPacking.None)
    {
        string path = Path.Combine(folder, Invariant($"dots-{columns}-{rows}-{bits}-{packing}.tif"));
        DotPictures.Write(path, DotPictures.Header(columns, rows, bits, packing, 100));
        return new(path, Invariant($"dots-{columns}-{rows}-{bits}-{packing}"), bits == 1 ? [0, 1] : Shares);
    }

    /// <summary>Bare, full and noisy parts, so that tiles that are all alike occur too.</summary>
    public static byte Value(int row, int column, int ink) => (column / 300 % 3, row / 400 % 2) switch
    {
        (0, 0) => 0,
        (2, 1) => 255,
        _ => (byte)Painter.Noise("p", "", column + (1000 * ink), row),
    };

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
