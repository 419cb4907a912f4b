using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Press files of boards printed on both faces, turned either way: on each face every piece shows the picture of that face, right-reading and with its head where it belongs.</summary>
public sealed class TurnedSheetsLawTests
{
    private const int Ppi = 100;

    // 200 × 120 pixels; the printed picture 50 × 20.
    private static readonly SizeMm Sheet = new(50.8, 30.48);

    private static readonly Layer[] Faces = [World.Colour, World.Colour with { Face = SheetFace.Second, ArtworkPage = 2 }];

    [Theory]
    [InlineData(SheetTurn.Sideways, false, 0)]
    [InlineData(SheetTurn.HeadToFoot, false, 0)]
    [InlineData(SheetTurn.Sideways, false, 90)]
    [InlineData(SheetTurn.HeadToFoot, false, 270)]
    [InlineData(SheetTurn.Sideways, true, 0)]
    [InlineData(SheetTurn.Sideways, true, 90)]
    [InlineData(SheetTurn.HeadToFoot, true, 0)]
    [InlineData(SheetTurn.HeadToFoot, true, 90)]
    public async Task Each_face_shows_its_own_picture_right_reading(SheetTurn turn, bool oneFile, double angle)
    {
        using Bench bench = new();
        (RunContext run, Painter painter) = Run(bench, turn, oneFile, angle);
        await bench.MakeAsync(painter, run);

        for (int face = 0; face < 2; face++)
        {
            (byte[] pixels, int width, _, int bands) = Bench.Vips(bench.InRun(Invariant($"sheet-01-layer-{face + 1}-colour.tif")));
            byte[,] black = new byte[pixels.Length / bands / width, width];
            for (int i = 0; i < pixels.Length / bands; i++)
                black[i / width, i % width] = pixels[(i * bands) + 3];
            Holds(black, Seen(run, face), slack: 1.5);
        }
    }

    [Theory]
    [InlineData(SheetTurn.Sideways, false, 90)]
    [InlineData(SheetTurn.HeadToFoot, false, 0)]
    [InlineData(SheetTurn.HeadToFoot, false, 90)]
    [InlineData(SheetTurn.Sideways, true, 90)]
    [InlineData(SheetTurn.HeadToFoot, true, 0)]
    public async Task Dots_lie_as_the_contone_does(SheetTurn turn, bool oneFile, double angle)
    {
        using Bench bench = new();
        (RunContext run, Painter painter) = Run(bench, turn, oneFile, angle);
        run = DotBench.In(run, Ppi, Ppi, Ppi, 14);
        IReadOnlyList<ManifestEntry> files = await bench.MakeAsync(painter, run);
        Reading<IReadOnlyList<ManifestEntry>> made = await bench.DotsAsync(bench.Maker(new PaintedStream(painter)), run, files);
        Assert.True(made.IsTaken, string.Join("\n", made.Faults));

        for (int face = 0; face < 2; face++)
        {
            byte[,] codes = DotBench.Codes(bench.InRun(Invariant($"sheet-01-layer-{face + 1}-black-dots.tif")));
            byte[,] full = new byte[codes.GetLength(0), codes.GetLength(1)];
            foreach ((int y, int x) in Places(codes))
                full[y, x] = (byte)(codes[y, x] > 0 ? 255 : 0);
            Holds(full, Seen(run, face), slack: 0);
        }
    }

    [Fact]
    public async Task Fronts_and_backs_on_one_sheet_are_printed_from_one_file_on_both_faces()
    {
        using Bench bench = new();
        (RunContext run, Painter painter) = Run(bench, SheetTurn.Sideways, oneFile: true, 0);
        IReadOnlyList<ManifestEntry> files = await bench.MakeAsync(painter, run);

        Assert.Equal(
            Assert.Single(files, f => f.Name == "sheet-01-layer-1-colour.tif").Sha256,
            Assert.Single(files, f => f.Name == "sheet-01-layer-2-colour.tif").Sha256);
    }

    /// <summary>One file is printed twice, its labels with it: who looks at the second face sees them as the turned sheet shows them.</summary>
    [Theory]
    [InlineData(SheetTurn.Sideways)]
    [InlineData(SheetTurn.HeadToFoot)]
    public async Task The_picture_of_the_second_face_shows_the_labels_that_its_file_prints(SheetTurn turn)
    {
        using Bench bench = new();
        (RunContext run, Painter painter) = Run(bench, turn, oneFile: true, 0, new MarkWish(Codes: false, LabelMm: 1.5));
        await bench.MakeAsync(painter, run);

        bool[,] first = Labels(bench.InRun("sheet-01-preview.png"), run), second = Labels(bench.InRun("sheet-01-back.png"), run, fromBehind: true);
        Assert.True(first.Cast<bool>().Count(dark => dark) > 20);
        (int rows, int columns) = (first.GetLength(0), first.GetLength(1));

        // One walks around the sheet: turned head to foot it stands on its head then.
        for (int y = 0; y < rows; y++)
            for (int x = 0; x < columns; x++)
                Assert.Equal(turn == SheetTurn.Sideways ? first[y, x] : first[rows - 1 - y, columns - 1 - x], second[y, x]);
    }

    // What is dark beside the pieces; from behind, left and right are changed.
    private static bool[,] Labels(string png, RunContext run, bool fromBehind = false)
    {
        (byte[] pixels, int width, int height, int bands) = Bench.Vips(png);
        bool[,] dark = new bool[height, width];
        foreach ((int y, int x) in Places(new byte[height, width]))
        {
            double mmX = ((fromBehind ? width - 1 - x : x) + 0.5) * 25.4 / Ppi, mmY = (height - y - 0.5) * 25.4 / Ppi;
            bool inPiece = run.Run.Sheets[0].Placements.Any(p => mmX > p.Place.XMm && mmX < p.Place.RightMm && mmY > p.Place.YMm && mmY < p.Place.TopMm);
            dark[y, x] = !inPiece && pixels[((y * width) + x) * bands] < 128;
        }

        return dark;
    }

    // A front and, where one file serves both faces, its back; else two fronts.
    private static (RunContext Run, Painter Painter) Run(Bench bench, SheetTurn turn, bool oneFile, double angle, MarkWish? marks = null)
    {
        LayerStack stack = new(Faces, false, [], SeenFrom.BothSides);
        ItemRecord item = World.Item("T-1-1", 12.7, 5.08, Faces) with { Stack = stack };
        item = item with { Item = item.Item with { Marks = marks } };
        Placement front = World.At(item, 5.08, 2.54, angle);
        Placement other = oneFile ? TurnedOver.Of(front, Sheet, turn) with { Copy = 2 } : World.At(item, 27.94, 10.16, angle, 2);
        RunContext run = World.Run(Sheet, [item], [front, other], World.Condition(400, light: false), Ppi, stack);
        run = run with { Run = run.Run with { Sheets = [run.Run.Sheets[0] with { Faces = new(turn, oneFile, 1.6) }] } };
        return (run, new Painter(bench.Pages, (page, plate, x, y, _, _) => plate == "Black" ? Picture(page.EndsWith('1') ? 1 : 2, x, y) : (byte)0));
    }

    // What lies where as the sheet is seen in the press, and which page it shows there.
    private static IEnumerable<(Placement Placed, int Page)> Seen(RunContext run, int face)
    {
        SheetLayout sheet = run.Run.Sheets[0];
        return sheet.Placements.Select(p => face == 0 ? p : TurnedOver.Of(p, sheet.Sheet, sheet.Faces!.Turn)).Select(p => (p, p.BackUp ? 2 : 1));
    }

    // Stands neither mirrored nor turned as it stands upright: a foot of its own length on each page.
    private static byte Picture(int page, int x, int y) => (byte)(x < 5 || (y >= 15 && x < 20 + (10 * page)) ? 255 : 0);

    private static void Holds(byte[,] black, IEnumerable<(Placement Placed, int Page)> pieces, double slack)
    {
        int rows = black.GetLength(0);
        double rest = Places(black).Sum(p => (double)black[p.Y, p.X]), wanted = 0;
        foreach ((Placement placed, int page) in pieces)
        {
            int left = Pixel(placed.Place.XMm), top = rows - Pixel(placed.Place.TopMm), wide = Pixel(placed.Place.WidthMm), high = Pixel(placed.Place.HeightMm);
            for (int y = 0; y < high; y++)
            {
                for (int x = 0; x < wide; x++)
                {
                    (int u, int v) = placed.QuarterTurns switch { 1 => (high - 1 - y, x), 2 => (wide - 1 - x, high - 1 - y), 3 => (y, wide - 1 - x), _ => (x, y) };
                    Assert.InRange(black[top + y, left + x] - (double)Picture(page, u, v), -slack, slack);
                    wanted += black[top + y, left + x];
                }
            }
        }

        Assert.Equal(wanted, rest);
    }

    private static IEnumerable<(int Y, int X)> Places(byte[,] picture) =>
        Enumerable.Range(0, picture.GetLength(0)).SelectMany(y => Enumerable.Range(0, picture.GetLength(1)).Select(x => (y, x)));

    private static int Pixel(double mm) => (int)Math.Round(mm * Ppi / 25.4);
}
