using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Output.PressFiles;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Two makes: what is the same, what differs and where, and what cannot be compared.</summary>
public sealed class MakeComparisonLawTests : IDisposable
{
    private const int Columns = 101, Rows = 70;

    private readonly string first = Directory.CreateTempSubdirectory("laydown-compare-").FullName, second = Directory.CreateTempSubdirectory("laydown-compare-").FullName;

    public MakeComparisonLawTests()
    {
        foreach (string folder in new[] { first, second })
            File.WriteAllText(Path.Combine(folder, "manifest.json"), "{}");
    }

    public void Dispose()
    {
        Directory.Delete(first, recursive: true);
        Directory.Delete(second, recursive: true);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Exactly_the_dots_that_were_changed_are_found(int bits)
    {
        Dots(first, "a-dots.tif", bits, DotPacking.None, (_, _, code) => code);
        Dots(second, "a-dots.tif", bits, DotPacking.None, (y, x, code) => (y, x) is (33, 17) or (60, 100) ? ((1 << bits) - 1) ^ code : code);
        FileDifference file = Assert.Single(Compared());
        Assert.Equal((Sameness.OtherPixels, true), (file.Is, file.Matters));
        Assert.Equal((2L, (long)Columns * Rows, 33, 17), (file.Pixels!.Different, file.Pixels.All, file.Pixels.FirstRow, file.Pixels.FirstColumn));
        int change = Change(33, 17, bits) + Change(60, 100, bits);
        Assert.Equal(change / (double)(Columns * Rows), file.Pixels.Inks[0].SecondMean - file.Pixels.Inks[0].FirstMean, tolerance: 1e-12);
    }

    [Fact]
    public void Files_packed_another_way_are_the_same_to_the_press()
    {
        Dots(first, "a-dots.tif", 1, DotPacking.None, (_, _, code) => code);
        Dots(second, "a-dots.tif", 1, DotPacking.Deflate, (_, _, code) => code);
        FileDifference file = Assert.Single(Compared());
        Assert.Equal((Sameness.SamePixels, false), (file.Is, file.Matters));
    }

    [Fact]
    public void The_same_dots_of_another_ink_or_resolution_are_not_the_same()
    {
        Dots(first, "a-dots.tif", 1, DotPacking.None, (_, _, code) => code);
        Dots(second, "a-dots.tif", 1, DotPacking.None, (_, _, code) => code, ink: "Magenta");
        Dots(first, "b-dots.tif", 1, DotPacking.None, (_, _, code) => code);
        Dots(second, "b-dots.tif", 1, DotPacking.None, (_, _, code) => code, dpi: 360);
        Assert.Equal([Sameness.OtherShape, Sameness.OtherShape], Compared().Select(f => f.Is));
    }

    [Fact]
    public void Contone_tells_each_ink()
    {
        Contone(first, 0);
        Contone(second, 9);
        PixelDifference pixels = Assert.Single(Compared()).Pixels!;
        Assert.Equal((1L, 5, 7, 9), (pixels.Different, pixels.FirstRow, pixels.FirstColumn, pixels.Largest));
        Assert.Equal([0L, 1L], pixels.Inks.Select(i => i.Different));
        Assert.Equal(["Cyan", "White"], pixels.Inks.Select(i => i.Ink));
    }

    [Fact]
    public void Names_of_one_make_alone_other_shapes_and_other_files_are_told()
    {
        File.WriteAllText(Path.Combine(first, "only.txt"), "1");
        File.WriteAllText(Path.Combine(second, "added.txt"), "1");
        File.WriteAllText(Path.Combine(first, "both.txt"), "1");
        File.WriteAllText(Path.Combine(second, "both.txt"), "2");
        File.WriteAllText(Path.Combine(first, "same.txt"), "1");
        File.WriteAllText(Path.Combine(second, "same.txt"), "1");
        Dots(first, "z-dots.tif", 1, DotPacking.None, (_, _, code) => code);
        Dots(second, "z-dots.tif", 2, DotPacking.None, (_, _, code) => code);
        Assert.Equal(
            [("added.txt", Sameness.OnlySecond), ("both.txt", Sameness.OtherBytes), ("only.txt", Sameness.OnlyFirst), ("same.txt", Sameness.SameBytes), ("z-dots.tif", Sameness.OtherShape)],
            Compared().Select(f => (f.Name, f.Is)));
    }

    [Fact]
    public void A_folder_that_is_no_make_and_a_damaged_file_are_named()
    {
        File.Delete(Path.Combine(second, "manifest.json"));
        Assert.Contains("no manifest.json in it", Assert.Single(new MakeComparison().Compare(first, second, TestContext.Current.CancellationToken).Faults).ToString(), StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(second, "manifest.json"), "{}");
        Dots(first, "a-dots.tif", 1, DotPacking.None, (_, _, code) => code);
        File.WriteAllBytes(Path.Combine(second, "a-dots.tif"), File.ReadAllBytes(Path.Combine(first, "a-dots.tif"))[..200]);
        Assert.All(new MakeComparison().Compare(first, second, TestContext.Current.CancellationToken).Faults, f => Assert.Equal("a-dots.tif", f.File));
    }

    private IReadOnlyList<FileDifference> Compared()
    {
        Reading<IReadOnlyList<FileDifference>> compared = new MakeComparison().Compare(first, second, TestContext.Current.CancellationToken);
        Assert.True(compared.IsTaken, string.Join("\n", compared.Faults));
        return compared.Value;
    }

    private static int Code(int y, int x, int bits) => ((y * 31) + (x * 17) + (x * y)) & ((1 << bits) - 1);

    private static int Change(int y, int x, int bits) => (((1 << bits) - 1) ^ Code(y, x, bits)) - Code(y, x, bits);

    private static void Dots(string folder, string name, int bits, DotPacking packing, Func<int, int, int, int> code, string ink = "Cyan", int dpi = 720)
    {
        DotHeader header = new(Columns, Rows, bits, dpi, dpi, 16, packing, ink, "test");
        using DotTiffWriter writer = DotTiffWriter.Create(Path.Combine(folder, name), header);
        for (int strip = 0; strip < header.Strips; strip++)
        {
            byte[] rows = new byte[header.BytesOf(strip)];
            for (int y = 0; y < header.RowsOf(strip); y++)
            {
                for (int x = 0; x < Columns; x++)
                {
                    int value = code((strip * 16) + y, x, Code((strip * 16) + y, x, bits));
                    rows[(y * header.RowBytes) + (x * bits / 8)] |= (byte)(value << (8 - bits - (x * bits % 8)));
                }
            }

            writer.Write(strip, rows);
        }

        writer.Finish();
    }

    private static void Contone(string folder, int lift)
    {
        using FileStream stream = new(Path.Combine(folder, "sheet.tif"), FileMode.Create, FileAccess.ReadWrite);
        using ContoneTiffWriter writer = new(stream, "sheet.tif", new(20, 10, 180, ["Cyan", "White"], "test", null));
        byte[] pixels = new byte[writer.BandRows * 40];
        for (int i = 0; i < pixels.Length; i++)
            pixels[i] = (byte)(i % 200);
        pixels[(5 * 40) + (7 * 2) + 1] += (byte)lift;
        for (int row = 0; row < 10; row += writer.BandRows)
            writer.WriteBand(pixels, Math.Min(writer.BandRows, 10 - row));
        writer.Finish();
    }
}
