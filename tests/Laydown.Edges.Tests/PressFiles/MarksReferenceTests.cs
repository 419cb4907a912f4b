using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using NetVips;
using Xunit;
using ZXing;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Marks in the press files as programs that know nothing of the product find them: codes by ZXing, lines by Ghostscript.</summary>
public sealed class MarksReferenceTests
{
    private static readonly MarkWish Wish = new(Cut: true, Register: true);

    [Theory]
    [InlineData(0, 72)]
    [InlineData(90, 120)]
    [InlineData(180, 120)]
    [InlineData(270, 144)]
    public async Task Every_piece_carries_its_id_as_a_code_that_is_read_from_the_press_file(double angle, int ppi)
    {
        using Bench bench = new();
        RunContext run = Marked(angle, ppi);
        await bench.MakeAsync(new Painter(bench.Pages, (_, _, _, _, _, _) => 255), run);

        SheetMark[] codes = [.. RunMarks.Of(run, 0).Marks.Where(m => m.Kind == MarkKind.Code)];
        (byte[] inks, int width, int height, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        Assert.Equal(["T-1-1:1", "T-1-1:2"], codes.Select(c => Read(inks, width, height, bands, c.Box, ppi)).Order());
    }

    [Fact]
    public async Task Marks_are_black_on_bare_ground_and_in_no_other_ink_and_never_within_the_finished_piece()
    {
        const int ppi = 120;
        using Bench bench = new();
        RunContext run = Marked(0, ppi);
        await bench.MakeAsync(new Painter(bench.Pages, (_, plate, _, _, _, _) => plate == "Cyan" ? (byte)200 : (byte)0), run);

        (byte[] inks, int width, int height, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        int black = 3;
        foreach (SheetMark mark in RunMarks.Of(run, 0).Marks)
        {
            long[] sums = new long[bands];
            Each(mark.Box.Grown(-0.3), ppi, height, (x, y) =>
            {
                for (int ink = 0; ink < bands; ink++)
                    sums[ink] += inks[(((y * width) + x) * bands) + ink];
            });
            Assert.True(sums[black] > 0, Invariant($"{mark.Kind} at {mark.Box}"));
            Assert.All(Enumerable.Range(0, bands).Where(i => i != black), i => Assert.Equal(0, sums[i]));
        }

        foreach (Placement placement in run.Run.Sheets[0].Placements)
            Each(placement.Place.Grown(-3.2), ppi, height, (x, y) => Assert.Equal(0, inks[(((y * width) + x) * bands) + black]));
    }

    [Fact]
    public async Task Ghostscript_finds_cuts_folds_eyelets_and_discs_of_the_cut_file_where_they_are_wanted()
    {
        using Bench bench = new();
        Finishing[] finishing = [new(FinishingKind.Hem, 1, WidthMm: 20), new(FinishingKind.Eyelet, 6, InsetMm: 10)];
        ItemRecord item = World.Item("T-1-1", 200, 100, [World.Colour], bleed: 20, finishing: finishing);
        item = item with { Item = item.Item with { Marks = new(Register: true) } };
        RunContext run = World.Run(new(400, 300), [item], [World.Whole(item, 60, 60)], ppi: 72);
        await bench.MakeAsync(new Painter(bench.Pages, (_, _, _, _, _, _) => 90), run);

        // Ten pixels for each millimetre, all separations as one grey picture.
        const double perMm = 10;
        string png = Path.Combine(bench.Root, "cut.png");
        Bench.Tool("gs", "-q", "-dBATCH", "-dNOPAUSE", "-dSAFER", "-sDEVICE=pnggray", "-r254", "-sOutputFile=" + png, bench.InRun("sheet-01-cut.pdf"));
        using Image page = Image.NewFromFile(png);
        Assert.Equal((4000, 3000), (page.Width, page.Height));
        byte[] grey = page.WriteToMemory<byte>();

        // The cut runs outside of what is folded under, the folds along the finished edge: 80 to 280 and 80 to 180 mm.
        Assert.True(Dark(60, 150) && Dark(300, 150) && Dark(190, 60) && Dark(190, 200));
        Assert.True(Dark(80, 150) && Dark(280, 150) && Dark(190, 80) && Dark(190, 180));
        foreach (PointMm eyelet in EyeletPlaces.Of(new(200, 100), 6, 10, [PieceEdge.Top, PieceEdge.Bottom, PieceEdge.Left, PieceEdge.Right]))
            Assert.True(Dark(80 + eyelet.XMm, 80 + eyelet.YMm), Invariant($"{eyelet}"));
        SheetMark[] discs = [.. RunMarks.Of(run, 0).Marks.Where(m => m.Kind == MarkKind.Disc)];
        Assert.True(discs.Length >= 5);
        Assert.All(discs, d => Assert.True(Dark(d.Box.XMm + (d.Box.WidthMm / 2) + (d.InkMm / 2), d.Box.YMm + (d.Box.HeightMm / 2))));

        // Nothing else is drawn inside, away from the eyelets.
        Assert.False(Dark(180, 130) || Dark(100, 120) || Dark(70, 130));
        Assert.Contains("Folding", await File.ReadAllTextAsync(bench.InRun("sheet-01-cut.svg")), StringComparison.Ordinal);

        // Within two tenths of a millimetre, as the line is a quarter wide.
        bool Dark(double xMm, double yMm)
        {
            int cx = (int)Math.Round(xMm * perMm), cy = page.Height - (int)Math.Round(yMm * perMm);
            for (int y = cy - 2; y <= cy + 2; y++)
            {
                for (int x = cx - 2; x <= cx + 2; x++)
                {
                    if (grey[(y * page.Width) + x] < 200)
                        return true;
                }
            }

            return false;
        }
    }

    [Fact]
    public async Task The_cut_file_is_sound_and_names_its_steps()
    {
        using Bench bench = new();
        await bench.MakeAsync(new Painter(bench.Pages, (_, _, _, _, _, _) => 90), Marked(0, 72));

        Bench.Tool("qpdf", "--check", bench.InRun("sheet-01-cut.pdf"));
        string text = Bench.Tool("qpdf", "--qdf", "--object-streams=disable", bench.InRun("sheet-01-cut.pdf"), "-");
        Assert.Contains("Structural", text, StringComparison.Ordinal);
        Assert.Contains("/Cutting", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Crosses_of_two_faces_fall_on_each_other_when_the_sheet_is_turned_over()
    {
        const int ppi = 120;
        using Bench bench = new();
        Layer behind = World.Colour with { Face = SheetFace.Second };
        ItemRecord item = World.Item("T-1-1", 120, 60, [World.Colour, behind], bleed: 3);
        item = item with { Item = item.Item with { Marks = new(Labels: false, Codes: false) } };
        RunContext run = World.Run(new(300, 200), [item], [World.Whole(item, 40, 60)], ppi: ppi);
        await bench.MakeAsync(new Painter(bench.Pages, (_, _, _, _, _, _) => 0), run);

        (byte[] front, int width, int height, int bands) = Bench.Vips(bench.InRun("sheet-01-layer-1-colour.tif"));
        (byte[] back, _, _, _) = Bench.Vips(bench.InRun("sheet-01-layer-2-colour.tif"));
        Assert.True(Enumerable.Range(0, width * height).Count(i => front[(i * bands) + 3] > 128) > 200);
        for (int y = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++)
                Assert.InRange(Math.Abs(front[(((y * width) + x) * bands) + 3] - back[(((y * width) + width - 1 - x) * bands) + 3]), 0, 130);
        }
    }

    // Two copies of 120 × 60 mm in a line, with room about.
    private static RunContext Marked(double angle, int ppi)
    {
        ItemRecord item = World.Item("T-1-1", 120, 60, [World.Colour], bleed: 3, finishing: [new(FinishingKind.CutSquare, 1)]);
        item = item with { Item = item.Item with { Marks = Wish, Quantity = 2 } };
        return World.Run(new(420, 320), [item], [World.At(item, 60, 100, angle), World.At(item, 230, 100, angle, copy: 2)], ppi: ppi);
    }

    private static void Each(RectMm box, double ppi, int height, Action<int, int> pixel)
    {
        for (int y = height - (int)(box.TopMm * ppi / 25.4); y < height - (int)Math.Ceiling(box.YMm * ppi / 25.4); y++)
        {
            for (int x = (int)Math.Ceiling(box.XMm * ppi / 25.4); x < (int)(box.RightMm * ppi / 25.4); x++)
                pixel(x, y);
        }
    }

    private static string? Read(byte[] inks, int width, int height, int bands, RectMm box, double ppi)
    {
        int left = (int)(box.XMm * ppi / 25.4), top = height - (int)(box.TopMm * ppi / 25.4), side = (int)(box.WidthMm * ppi / 25.4);
        byte[] grey = new byte[side * side];
        for (int y = 0; y < side; y++)
        {
            for (int x = 0; x < side; x++)
            {
                int at = ((((top + y) * width) + left + x) * bands);
                grey[(y * side) + x] = (byte)(255 - Math.Min(255, Enumerable.Range(0, bands).Sum(i => inks[at + i])));
            }
        }

        return new BarcodeReaderGeneric { Options = new() { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] } }
            .Decode(new RGBLuminanceSource(grey, side, side, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;
    }
}
