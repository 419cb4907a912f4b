using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Output.Documents;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Press files and set-up sheet of two rolls that lie side by side: each roll has files of its own width, its pieces where its layout has them.</summary>
public sealed class TwoRollsLawTests
{
    private const int Ppi = 100;

    // 200 and 120 pixels wide, both 160 long; the item 50 × 20 pixels.
    private static readonly SizeMm First = new(50.8, 40.64), Second = new(30.48, 40.64);

    [Fact]
    public async Task Each_roll_has_its_pieces_where_its_own_layout_has_them_and_nothing_of_the_other()
    {
        using Bench bench = new();
        (RunContext run, Painter painter) = Run(bench);
        await bench.MakeAsync(painter, run);

        Holds(bench, run, 0, 200);
        Holds(bench, run, 1, 120);
        foreach (int roll in new[] { 1, 2 })
        {
            Assert.True(File.Exists(bench.InRun(Invariant($"sheet-{roll:00}-cut.pdf"))));
            Assert.True(File.Exists(bench.InRun(Invariant($"sheet-{roll:00}-preview.png"))));
        }
    }

    [Fact]
    public async Task Dots_of_both_rolls_lie_as_their_contone_does()
    {
        using Bench bench = new();
        (RunContext run, Painter painter) = Run(bench);
        run = DotBench.In(run, Ppi, Ppi, Ppi, 14);
        IReadOnlyList<ManifestEntry> files = await bench.MakeAsync(painter, run);
        Assert.True((await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), run, files)).IsTaken);

        for (int roll = 0; roll < 2; roll++)
        {
            byte[,] codes = DotBench.Codes(bench.InRun(Invariant($"sheet-{roll + 1:00}-layer-1-black-dots.tif")));
            for (int y = 0; y < codes.GetLength(0); y++)
                for (int x = 0; x < codes.GetLength(1); x++)
                    Assert.Equal(Dark(run.Run.Sheets[roll], x, y), codes[y, x] > 0);
        }
    }

    [Fact]
    public void The_set_up_sheet_names_both_rolls_their_places_and_cuts_and_draws_both()
    {
        using Bench bench = new();
        SetUpContent content = SetUpContents.Of(Run(bench).Run);

        Assert.Contains(content.Belt, r => r.Name == "Roll 1" && r.Value.Contains("starts at 0 mm", StringComparison.Ordinal) && r.Value.Contains("50.8 mm wide", StringComparison.Ordinal));
        Assert.Contains(content.Belt, r => r.Name == "Roll 2" && r.Value.Contains("starts at 60 mm", StringComparison.Ordinal) && r.Value.Contains("Narrow roll", StringComparison.Ordinal));
        Assert.Contains(content.Belt, r => r.Name == "Cut roll 2 across at" && r.Value.StartsWith("20 mm", StringComparison.Ordinal));
        Assert.Contains(content.Belt, r => r.Name == "Printed together");
        Assert.Contains(content.Figures, f => f.Name == "Two rolls, each");
        Assert.Equal(2, content.SheetDrawings.Count);
        Assert.Contains("Narrow roll", content.SheetDrawings[1].Title, StringComparison.Ordinal);
        Assert.Contains("roll 2", content.BeltDrawing.Svg, StringComparison.Ordinal);
        Assert.Null(content.FacesDrawing);
    }

    private static void Holds(Bench bench, RunContext run, int roll, int wide)
    {
        (byte[] pixels, int width, int height, int bands) = Bench.Vips(bench.InRun(Invariant($"sheet-{roll + 1:00}-layer-1-colour.tif")));
        Assert.Equal((wide, 160), (width, height));
        for (int i = 0; i < pixels.Length / bands; i++)
            Assert.Equal(Dark(run.Run.Sheets[roll], i % width, i / width), pixels[(i * bands) + 3] > 127);
    }

    // The picture is dark on its left fifth: 10 of 50 pixels, turned counter-clockwise at its lower end.
    private static bool Dark(SheetLayout sheet, int x, int y) => sheet.Placements.Any(p =>
    {
        int u = x - Pixel(p.Place.XMm), v = y - (160 - Pixel(p.Place.TopMm)), wide = Pixel(p.Place.WidthMm), high = Pixel(p.Place.HeightMm);
        return u >= 0 && v >= 0 && u < wide && v < high && (p.Turned ? v >= high - 10 : u < 10);
    });

    private static int Pixel(double mm) => (int)Math.Round(mm * Ppi / 25.4);

    private static (RunContext Run, Painter Painter) Run(Bench bench)
    {
        ItemRecord item = World.Item("T-1-1", 12.7, 5.08, [World.Colour]);
        Stock wide = World.Board(50.8, 1000) with { Id = "wide-roll", Name = "Wide roll", Kind = StockKind.Roll, WidthMm = 50.8, LengthMm = 10_000 };
        Stock narrow = wide with { Id = "narrow-roll", Name = "Narrow roll", WidthMm = 30.48 };
        RunContext run = World.Run(First, [item], [World.Whole(item, 5.08, 2.54), World.Whole(item, 27.94, 20.32, 2)], World.Condition(400, light: false), Ppi);
        SheetLayout first = run.Run.Sheets[0] with { StockId = wide.Id }, second = new(Second, 5, [World.Whole(item, 10.16, 22.86, 3), World.Whole(item, 5.08, 5.08, 4, turned: true)], 1, [], [20], StockId: narrow.Id);
        BeltPlace belt = new(2600, 50.8, 40.64, false, [new(1, 0, 50.8, 1) { BlankId = wide.Id }, new(2, 60, 30.48, 1) { BlankId = narrow.Id }], ["A"], [], 0, "none");
        Run planned = run.Run with { StockId = wide.Id, BesideStockIds = [narrow.Id], Sheets = [first, second], Belt = belt };
        return (run with { Run = planned, Stock = wide, Beside = [narrow] }, new Painter(bench.Pages, (_, plate, x, _, _, _) => plate == "Black" && x < 10 ? (byte)255 : (byte)0));
    }
}
