using System.Security.Cryptography;
using Laydown.Formats.TiffWriting;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Web.Tests.Sample;

/// <summary>Small but real press files for the first sheet of a sample run: contone of every layer, or dots of its first two inks.</summary>
internal static class MadeSheets
{
    public const string Run = "R-20261126-01";
    public const int Ppi = 25, ScanDpi = 60, FeedDpi = 30;

    /// <summary>Value of a contone ink: steps across, a bare edge, another slope for each plane.</summary>
    public static byte Value(int plane, int row, int column) => row < 8 ? (byte)0 : (byte)(((column / 5 * (3 + plane)) + (row / 7 * 11)) % 256);

    /// <summary>Code of a dot of one bit.</summary>
    public static int Dot(int plane, int row, int column) => ((row * 7) + (column * (3 + plane)) + (column / 64)) % 5 == 0 ? 1 : 0;

    /// <summary>Writes them and notes the run as made.</summary>
    public static async Task<RunRecord> WriteAsync(SampleShop shop, bool contone = true, bool dots = false)
    {
        RunRecord record = (await shop.Store.RunAsync(Run, CancellationToken.None))!;
        string folder = Path.Combine(shop.Folder, "runs", Run);
        Directory.CreateDirectory(folder);
        List<ManifestEntry> entries = [];
        var size = record.Run.Sheets[0].Sheet;
        int plane = 0;
        for (int layer = 1; contone && layer <= record.Run.Stack.Layers.Count; layer++)
        {
            string[] inks = InksOf(record.Run.Stack.Layers[layer - 1].Group);
            string name = Invariant($"sheet-01-layer-{layer}-{(inks.Length > 1 ? "colour" : "white")}.tif");
            Contone(Path.Combine(folder, name), Px(size.WidthMm, Ppi), Px(size.HeightMm, Ppi), inks, plane);
            entries.Add(Entry(folder, name, "contone"));
            plane += inks.Length;
        }

        foreach ((string ink, int i) in dots ? new[] { ("Cyan", 0), ("Magenta", 1) } : [])
        {
            string name = Invariant($"sheet-01-layer-1-{ink.ToLowerInvariant()}.tif");
            Dots(Path.Combine(folder, name), new(Px(size.WidthMm, ScanDpi), Px(size.HeightMm, FeedDpi), 1, ScanDpi, FeedDpi, 64, DotPacking.None, ink, "Invented"), i);
            entries.Add(Entry(folder, name, "dots"));
        }

        RunRecord made = record with { State = RunState.Completed, FolderName = Run, Files = entries };
        await shop.Store.SaveRunsAsync([made], ItemState.Completed, CancellationToken.None);
        return made;
    }

    public static int Px(double mm, double dpi) => (int)Math.Round(mm * dpi / 25.4, MidpointRounding.AwayFromZero);

    private static string[] InksOf(InkGroup group) => group == InkGroup.Colour ? ["Cyan", "Magenta", "Yellow", "Black"] : ["White"];

    private static ManifestEntry Entry(string folder, string name, string what)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(folder, name));
        return new(name, what, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes)));
    }

    private static void Contone(string path, int columns, int rows, string[] inks, int firstPlane)
    {
        using FileStream stream = new(path, FileMode.Create, FileAccess.ReadWrite);
        using ContoneTiffWriter writer = new(stream, "sample", new(columns, rows, Ppi, inks, "Invented", null));
        for (int row = 0; row < rows; row += writer.BandRows)
        {
            int high = Math.Min(writer.BandRows, rows - row);
            byte[] band = new byte[high * columns * inks.Length];
            for (int at = 0; at < band.Length; at++)
                band[at] = Value(firstPlane + (at % inks.Length), row + (at / inks.Length / columns), at / inks.Length % columns);
            writer.WriteBand(band, high);
        }

        writer.Finish();
    }

    private static void Dots(string path, DotHeader header, int plane)
    {
        using DotTiffWriter writer = DotTiffWriter.Create(path, header);
        for (int strip = 0; strip < header.Strips; strip++)
        {
            byte[] bytes = new byte[header.BytesOf(strip)];
            for (int row = 0; row < header.RowsOf(strip); row++)
            {
                for (int column = 0; column < header.Columns; column++)
                    bytes[(row * header.RowBytes) + (column >> 3)] |= (byte)(Dot(plane, (strip * header.RowsPerStrip) + row, column) << (7 - (column & 7)));
            }

            writer.Write(strip, bytes);
        }

        writer.Finish();
    }
}
