using System.Globalization;
using System.Xml.Linq;
using Laydown.Artwork.Pages;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

public sealed class CutDrawingLawTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public async Task A_square_piece_is_cut_at_its_trim_in_millimetres()
    {
        ItemRecord item = World.Item("T-1-1", 60, 30, [World.Colour], bleed: 3, finishing: [new(FinishingKind.CutSquare, 1)]);
        XElement svg = await CutsAsync(World.Run(new(200, 100), [item], [World.Whole(item, 10, 20)], ppi: 90));
        Assert.Equal(("200mm", "100mm", "0 0 200 100"), ((string)svg.Attribute("width")!, (string)svg.Attribute("height")!, (string)svg.Attribute("viewBox")!));
        PointMm[] corners = Assert.Single(Paths(svg, "Cutting"));
        Assert.Equal([new(13, 77), new(73, 77), new(73, 47), new(13, 47)], corners);
    }

    [Fact]
    public async Task A_contour_scales_with_the_piece_and_turns_and_mirrors_with_it()
    {
        // A triangle on a page drawn at half size: its corner at 5 mm, 5 mm stands at 10 mm, 10 mm of the finished piece.
        CutPath triangle = new([new(5, 5), new(25, 5), new(5, 10)], true, "Cutting");
        ItemRecord item = World.Item("T-1-1", 60, 30, [World.Colour], bleed: 2, finishing: [new(FinishingKind.CutContour, 1)], cuts: [triangle]);
        item = item with { Artwork = item.Artwork! with { Pages = [item.Artwork!.Pages[0] with { TrimMm = new(0, 0, 30, 15) }] } };
        RunContext upright = World.Run(new(200, 100), [item], [World.Whole(item, 10, 20)], ppi: 90);
        Assert.Equal([new(22, 68), new(62, 68), new(22, 58)], Assert.Single(Paths(await CutsAsync(upright), "Cutting")));

        // Turned counter-clockwise about, the piece is 34 mm wide and 64 mm high: x = 34 − y, y = x.
        RunContext turned = World.Run(new(200, 100), [item], [World.Whole(item, 10, 20, turned: true)], ppi: 90);
        Assert.Equal([new(32, 68), new(32, 28), new(22, 68)], Assert.Single(Paths(await CutsAsync(turned), "Cutting")));

        // On its head x = 64 − x, y = 34 − y; turned clockwise x = y, y = 64 − x.
        RunContext onHead = World.Run(new(200, 100), [item], [World.At(item, 10, 20, 180)], ppi: 90);
        Assert.Equal([new(62, 58), new(22, 58), new(62, 68)], Assert.Single(Paths(await CutsAsync(onHead), "Cutting")));
        RunContext clockwise = World.Run(new(200, 100), [item], [World.At(item, 10, 20, 270)], ppi: 90);
        Assert.Equal([new(22, 28), new(22, 68), new(32, 28)], Assert.Single(Paths(await CutsAsync(clockwise), "Cutting")));

        ItemRecord behind = item with { Stack = new([World.Colour with { Face = SheetFace.Second, Mirrored = true }], false, []) };
        RunContext mirrored = World.Run(new(200, 100), [behind], [World.Whole(behind, 10, 20)], ppi: 90);
        Assert.Equal([new(62, 68), new(22, 68), new(62, 58)], Assert.Single(Paths(await CutsAsync(mirrored), "Cutting")));
    }

    [Fact]
    public async Task Panels_keep_their_overlap_and_holes_their_distance_from_the_edge()
    {
        ItemRecord item = World.Item("T-1-1", 100, 40, [World.Colour], bleed: 5, finishing: [new(FinishingKind.CutSquare, 1), new(FinishingKind.Drill, 4)]);
        Placement[] panels =
        [
            new("T-1-1/1", 1, new(0, 0, 65, 50), false, new RectMm(0, 0, 65, 50)),
            new("T-1-1/2", 1, new(0, 50, 65, 50), false, new RectMm(45, 0, 65, 50)),
        ];
        XElement svg = await CutsAsync(World.Run(new(100, 100), [item], panels, ppi: 90));
        PointMm[][] cuts = [.. Paths(svg, "Cutting")];
        Assert.Equal([new(5, 95), new(65, 95), new(65, 55), new(5, 55)], cuts[0]);
        Assert.Equal([new(0, 45), new(60, 45), new(60, 5), new(0, 5)], cuts[1]);
        Assert.Equal(4, svg.Elements(Svg + "g").Single(g => (string?)g.Attribute("id") == "Drilling").Elements().Count());
    }

    private static async Task<XElement> CutsAsync(RunContext run)
    {
        using Bench bench = new();
        await bench.MakeAsync(new Painter(bench.Pages, (_, _, _, _, _, _) => 20), run);
        return XElement.Load(bench.InRun("sheet-01-cut.svg"));
    }

    private static IEnumerable<PointMm[]> Paths(XElement svg, string step) => svg.Elements(Svg + "g")
        .Where(g => (string?)g.Attribute("id") == step)
        .SelectMany(g => g.Elements(Svg + "path"))
        .Select(p => ((string)p.Attribute("d")!).TrimEnd('Z').Split('M', 'L').Where(t => t.Length > 0).Select(Point).ToArray());

    private static PointMm Point(string text)
    {
        double[] xy = [.. text.Split(' ').Select(t => double.Parse(t, CultureInfo.InvariantCulture))];
        return new(xy[0], xy[1]);
    }
}
