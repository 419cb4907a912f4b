using System.Globalization;
using BitMiracle.LibTiff.Classic;
using Laydown.Colour.Charts;
using Laydown.Measures;
using Laydown.Output.Charts;

namespace Laydown.Edges.Tests.Charts;

/// <summary>A chart folder: pixels, reference and places say the same; whole or absent.</summary>
public sealed class ChartFolderLawTests : IDisposable
{
    private static readonly DateTimeOffset Instant = new(2026, 3, 4, 5, 6, 7, TimeSpan.Zero);
    private readonly string root = Directory.CreateTempSubdirectory("charts").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void Pixels_at_the_middle_of_each_patch_are_what_the_reference_says()
    {
        (Chart chart, IReadOnlyList<ChartSheet> sheets) = Made();
        IReadOnlyList<string> files = Write(chart, sheets, "small").Value;
        Assert.Equal(2 + sheets.Count, files.Count);
        string[][] reference = [.. File.ReadAllLines(files[0]).SkipWhile(l => l != "BEGIN_DATA").Skip(1).TakeWhile(l =>
            l != "END_DATA").Select(l => l.Split('\t'))];
        Assert.Equal(chart.Patches.Count, reference.Length);
        Dictionary<string, double[]> asked = reference.ToDictionary(
            r => r[0], r => r.Skip(4).Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray());
        foreach (ChartSheet sheet in sheets)
        {
            byte[][] rows = Rows(files[1 + sheet.Page], chart.InkNames.Count);
            foreach (PlacedPatch patch in sheet.Patches)
            {
                int x = (int)((patch.Place.XMm + (patch.Place.WidthMm / 2)) / 25.4 * 50);
                int y = (int)((sheet.Size.HeightMm - patch.Place.YMm - (patch.Place.HeightMm / 2)) / 25.4 * 50);
                for (int ink = 0; ink < chart.InkNames.Count; ink++)
                    Assert.Equal(asked[patch.Patch.Id][ink] * 2.55, rows[y][(x * chart.InkNames.Count) + ink], 0.001);
            }
        }
    }

    [Fact]
    public void The_same_chart_gives_the_same_bytes()
    {
        (Chart chart, IReadOnlyList<ChartSheet> sheets) = Made();
        byte[][] first = [.. Write(chart, sheets, "same").Value.Select(File.ReadAllBytes)];
        byte[][] again = [.. Write(chart, sheets, "same").Value.Select(File.ReadAllBytes)];
        Assert.Equal(first, again);
    }

    [Fact]
    public void Cancelled_or_failed_nothing_stays()
    {
        (Chart chart, IReadOnlyList<ChartSheet> sheets) = Made();
        using CancellationTokenSource stopped = new();
        stopped.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() =>
            ChartFolder.Write(chart, sheets, Path.Combine(root, "charts"), Path.Combine(root, "scratch"), "gone", Instant, 50,
                stopped.Token));
        File.WriteAllText(Path.Combine(root, "file"), "");
        Reading<IReadOnlyList<string>> failed =
            ChartFolder.Write(chart, sheets, Path.Combine(root, "file"), Path.Combine(root, "scratch"), "gone", Instant, 50,
                CancellationToken.None);
        Assert.False(failed.IsTaken);
        Assert.False(Directory.Exists(Path.Combine(root, "charts", "gone")));
        Assert.Empty(Directory.GetFileSystemEntries(Path.Combine(root, "scratch")));
    }

    [Fact]
    public void A_sheet_of_too_many_pixels_is_refused()
    {
        (Chart chart, _) = Made();
        IReadOnlyList<ChartSheet> sheets = ChartLayout.Make(chart, ChartSheetForm.For(new(3200, 5000), ReadingWay.Hand, 1)).Value;
        Reading<IReadOnlyList<string>> refused =
            ChartFolder.Write(chart, sheets, root, Path.Combine(root, "scratch"), "big", Instant, 1200, CancellationToken.None);
        Assert.Equal("resolution", Assert.Single(refused.Faults).Field);
    }

    private Reading<IReadOnlyList<string>> Write(Chart chart, IReadOnlyList<ChartSheet> sheets, string id) =>
        ChartFolder.Write(chart, sheets, Path.Combine(root, "charts"), Path.Combine(root, "scratch"), id, Instant, 50,
            CancellationToken.None);

    private static (Chart Chart, IReadOnlyList<ChartSheet> Sheets) Made()
    {
        Chart chart = ChartDesign.Make(ChartKind.Linearise,
            [new("Cyan"), new("Magenta"), new("Yellow"), new("Black"), new("Light cyan"), new("Light magenta", 80)], 280, 11).Value;
        return (chart, ChartLayout.Make(chart, ChartSheetForm.For(new(297, 210), ReadingWay.Strip, 11)).Value);
    }

    private static byte[][] Rows(string file, int inks)
    {
        using Tiff tiff = Tiff.Open(file, "r");
        Assert.Equal(inks, tiff.GetField(TiffTag.SAMPLESPERPIXEL)[0].ToInt());
        int rows = tiff.GetField(TiffTag.IMAGELENGTH)[0].ToInt();
        byte[][] all = new byte[rows][];
        for (int row = 0; row < rows; row++)
        {
            all[row] = new byte[tiff.ScanlineSize()];
            Assert.True(tiff.ReadScanline(all[row], row));
        }

        return all;
    }
}
