using Laydown.Artwork.Pages;
using Laydown.Layout.Lanes;
using Laydown.Layout.Marks;
using Laydown.Layout.Panels;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Drawings;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Core.Tests.Drawings;

public sealed class DrawingsLawTests
{
    private static readonly Stock Acrylic = new(
        "acrylic", "Clear acrylic", true, StockKind.Board, "acrylic, cast", 2050, 1520, 3, 0.7, 5, 3570, 3.2, 70, 80, GrainDirection.None, SheetLight.Clear, 8, 92, new(8000), 10);

    private static readonly VacuumZone[] Zones = [new("A", 0, 300), new("B", 300, 700), new("C", 1000, 600)];

    private static readonly PressDescription Press = new(
        "p", "Demo press", true, 1600, 3050, 50, 5, Zones, [0, 100, 300, 700, 1000], 3, 4, [], [], [], new(1, 1, 1, 1, 1), new(395, 8, 20, 2), new(3, 10), [],
        new(new(1), 1, 1, 1, 1, 1));

    private static readonly Belt Belt = new(1600, 3050, [.. Zones.Select(z => new BeltZone(z.Id, z.StartMm, z.WidthMm))], Press.Lays, 3);

    private static readonly SheetLayout Sheet = new(
        new(1220, 2440), 10, [new("a", 1, new(10, 10, 606, 406), false), new("b", 1, new(10, 420, 306, 206), true), new("b", 2, new(330, 420, 306, 206), false)],
        3, [new(0, 700, 1220, 1740)]);

    private static readonly Dictionary<string, string> Names = new() { ["a"] = "Trail sign", ["b"] = "<script>&\"\u0001</script>" };

    private static Layer Of(SheetFace face, InkGroup group, int page = 1, bool mirrored = true) => new(face, group, null, null, page, 100, 0, mirrored);

    private static ArtworkPage Page => Artwork.Sample.Page;

    private static Finding At(Severity severity, RectMm? place, int? page = 1) => new("x", severity, page, place, "what & why", "1 mm", "2 mm", null, "from memory");

    private static PanelPlan Plan(PanelWish wish) => Panelling.Solve(new("w", new(6460, 2460), 30, new(1350, wish.Pattern == PanelPattern.Columns ? 9000 : 1300), false, wish, [])).Value;

    [Fact]
    public void Panels_are_drawn_to_scale_with_their_numbers_and_the_edge_that_lies_over()
    {
        PanelPlan plan = Plan(new());
        Drawn drawn = new(HangingDrawing.Draw("Wall", plan, 30));
        double scale = 650.0 / 6460;
        foreach (Panel panel in plan.Panels)
        {
            Assert.Contains(drawn.Rects, r => Near(r.X, 66 + (panel.Part.XMm * scale)) && Near(r.W, panel.Part.WidthMm * scale) && Near(r.H, 2460 * scale));
            Assert.Contains(drawn.Texts, t => t.Text == Invariant($"{panel.Number}"));
        }

        // Distances count from the finished edge.
        Assert.All(plan.Seams, s => Assert.True(drawn.Says(Invariant($"{s.Zone.XMm - 30:0.#}"))));
    }

    public static IEnumerable<TheoryDataRow<string, string>> All() =>
    [
        new("section", CrossSection.Draw(new([Of(SheetFace.Second, InkGroup.Colour), Of(SheetFace.Second, InkGroup.White), Of(SheetFace.First, InkGroup.Clear)], true, []), Acrylic)),
        new("bare section", CrossSection.Draw(new([], false, []), Acrylic with { Light = SheetLight.Opal })),
        new("full section", CrossSection.Draw(new([.. Enum.GetValues<InkGroup>().Select(g => Of(SheetFace.First, g))], false, []), Acrylic with { Light = SheetLight.Opaque })),
        new("belt with lanes", BeltDrawing.Draw(Press, LanePlan.Solve("b", new(400, 300), 10, false, Belt).Value)),
        new("belt with board", BeltDrawing.Draw(Press, BeltPlaces.ForBoard("b", Sheet.Sheet, 2, Belt).Value, Sheet)),
        new("belt with turned board", BeltDrawing.Draw(Press, new(1600, 1520, 610, true, [new(1, 0, 1520, 1)], ["A"], ["B", "C"], 0, "pins"), Sheet with { Sheet = new(610, 1520) })),
        new("belt with roll", BeltDrawing.Draw(Press, BeltPlaces.ForRoll("r", 1370, 30_000, 0, Belt).Value, Sheet)),
        new("board", BoardDrawing.Draw(Sheet, Names, GrainDirection.AlongLength)),
        new("wide board", BoardDrawing.Draw(Sheet with { Sheet = new(3050, 1525), Offcuts = [new(1220, 0, 1830, 1525)] }, Names, GrainDirection.AlongWidth)),
        new("long roll", BoardDrawing.Draw(Sheet with { Sheet = new(1370, 30_000) }, Names)),
        new("empty board", BoardDrawing.Draw(Sheet with { Placements = [], Offcuts = [] }, Names)),
        new("board with marks", BoardDrawing.Draw(Sheet, Names, GrainDirection.None, [.. Enum.GetValues<MarkKind>().Select((k, i) => new SheetMark(k, "p", 1, new(20 + (i * 60), 5, 40, 6), 4, i % 2 == 0, "a & b"))])),
        new("hanging plan", HangingDrawing.Draw("Wall & <hall>", Plan(new()), 30)),
        new("hanging plan of bricks", HangingDrawing.Draw("Wall", Plan(new(Pattern: PanelPattern.Brick, FromRight: true)))),
        new("hanging plan with gaps", HangingDrawing.Draw("Frames", Plan(new(-40, -40, Pattern: PanelPattern.Grid)), 30)),
        new("tanks", TankDrawing.Draw([new("C", "Cyan", 3000, 400, 2000, 300), new("M", "Magenta", 3000, 400, 500, 200), new("Y", "Yellow", 3000, 400, 100, 200)])),
        new("findings", PageFindings.Draw(Page, [At(Severity.Stop, new(0, 0, 606, 406)), At(Severity.Note, new(-50, 390, 700, 400)), At(Severity.Warn, null)])),
    ];

    [Theory, MemberData(nameof(All))]
    public void A_drawing_is_sound(string name, string svg)
    {
        Assert.NotEmpty(name);
        new Drawn(svg).IsSound();
    }

    [Fact]
    public void Pieces_are_drawn_to_scale_where_they_lie()
    {
        Drawn drawn = new(BoardDrawing.Draw(Sheet, Names));
        (double left, double top, double length, double width) = drawn.Rects[0];
        double scale = length / 2440;
        Assert.Equal(1220 * scale, width, 0.01);
        foreach (Placement p in Sheet.Placements)
            // The sheet lies with its upper edge to the right: its height runs to the right, its width downward.
            Assert.Contains(drawn.Rects, r =>
                Near(r.X, left + (p.Place.YMm * scale)) && Near(r.Y, top + (p.Place.XMm * scale)) && Near(r.W, p.Place.HeightMm * scale) && Near(r.H, p.Place.WidthMm * scale));
    }

    [Fact]
    public void A_sheet_wider_than_long_is_drawn_upright_from_its_lower_left_corner()
    {
        Drawn drawn = new(BoardDrawing.Draw(Sheet with { Sheet = new(3050, 1525) }, Names));
        (double left, double top, double width, double height) = drawn.Rects[0];
        double scale = width / 3050;
        Assert.Contains(drawn.Rects, r => Near(r.X, left + (10 * scale)) && Near(r.Y, top + height - (416 * scale)) && Near(r.W, 606 * scale) && Near(r.H, 406 * scale));
    }

    [Fact]
    public void Layers_lie_from_the_viewer_inward_and_carry_the_order_of_printing()
    {
        LayerStack stack = new([Of(SheetFace.First, InkGroup.White, mirrored: false), Of(SheetFace.First, InkGroup.Colour, mirrored: false), Of(SheetFace.Second, InkGroup.BlockOut)], true, []);
        Drawn drawn = new(CrossSection.Draw(stack, Acrylic, lit: true));
        Assert.Equal(
            ["you stand here", "Colour, page 1", "White", "Clear acrylic", "Block-out", "lamp on"],
            drawn.Texts.OrderBy(t => t.Y).Select(t => t.Text).Where(t => t is "you stand here" or "White" or "Block-out" or "lamp on" or "Clear acrylic" || t.StartsWith("Colour", StringComparison.Ordinal)));
        Assert.Equal(["2", "1", "3"], drawn.Texts.Where(t => t.Text is "1" or "2" or "3").OrderBy(t => t.Y).Select(t => t.Text));
    }

    [Fact]
    public void Every_zone_says_whether_it_is_open_and_lanes_lie_to_scale()
    {
        BeltPlace place = LanePlan.Solve("b", new(400, 300), 10, false, Belt).Value;
        Drawn drawn = new(BeltDrawing.Draw(Press, place));
        Assert.Equal(place.OpenZones.Count, drawn.Texts.Count(t => t.Text == "open"));
        Assert.Equal(place.ShutZones.Count, drawn.Texts.Count(t => t.Text == "shut"));
        (double left, _, double belt, _) = drawn.Rects.First(r => r.W > 600);
        foreach (Lane lane in place.Lanes)
        {
            Assert.True(drawn.Says(Invariant($"at {lane.StartMm:0.#}")));
            Assert.Contains(drawn.Rects, r => Near(r.X, left + (lane.StartMm * belt / 1600)) && Near(r.W, 400 * belt / 1600) && Near(r.H, 300 * belt / 1600));
        }
    }

    [Fact]
    public void A_tank_that_runs_dry_or_falls_low_says_so()
    {
        Drawn drawn = new(TankDrawing.Draw([new("C", "Cyan", 3000, 400, 2000, 1600), new("M", "Magenta", 3000, 400, 500, 200), new("Y", "Yellow", 3000, 400, 100, 200)]));
        Assert.Equal(["falls low", "runs dry"], drawn.Texts.Where(t => t.Text is "falls low" or "runs dry").OrderBy(t => t.X).Select(t => t.Text));
    }

    [Fact]
    public void Numbers_on_the_page_are_places_in_the_list_and_up_is_up()
    {
        Drawn drawn = new(PageFindings.Draw(Page, [At(Severity.Note, null), At(Severity.Stop, new(100, 10, 50, 50)), At(Severity.Warn, new(100, 10, 50, 50), page: 2), At(Severity.Warn, new(100, 340, 50, 50))]));
        Assert.Equal(["4", "2"], drawn.Texts.OrderBy(t => t.Y).Select(t => t.Text));
        Assert.Null(drawn.Root.Attribute("width"));
        Assert.Equal(406.0 / 606, drawn.Height / drawn.Width, 0.001);
    }

    [Fact]
    public void Words_of_a_customer_cannot_become_marks()
    {
        string svg = BoardDrawing.Draw(Sheet, Names);
        Assert.DoesNotContain("<script", svg, StringComparison.Ordinal);
        Assert.Contains("&lt;script", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tank_without_room_is_refused() => Assert.ThrowsAny<ArgumentException>(() => TankDrawing.Draw([new("C", "Cyan", 0, 0, 0, 0)]));

    private static bool Near(double one, double other) => Math.Abs(one - other) < 0.02;
}
