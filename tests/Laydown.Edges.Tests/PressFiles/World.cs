using Laydown.Artwork.Pages;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>A small invented shop with one press, so that a run can be made without any file of the demo.</summary>
internal static class World
{
    public static readonly Layer Colour = new(SheetFace.First, InkGroup.Colour, null, null, 1, 100, 0, false);

    public static Layer White(WhiteSource source, double strength = 100, double choke = 0, string? separation = null) =>
        new(SheetFace.First, InkGroup.White, source, separation, 1, strength, choke, false);

    public static InkSet Inks { get; } = new("test-inks", "Invented inks", true, [.. Enum.GetValues<InkRole>().Select(r => new Ink(
        r, NameOf(r), 1.08, new Money(9000), 1.4, r is InkRole.LightCyan or InkRole.LightMagenta ? 0.3 : 1, 300))]);

    public static PrintCondition Condition(double total = 260, bool light = true) => new(
        "test-condition", "Invented", true, "test-press", ["fine"], "test-inks", ["test-board"], "none.icc", total,
        [.. Enum.GetValues<InkRole>().Where(r => light || r is not (InkRole.LightCyan or InkRole.LightMagenta))
            .Select(r => new InkLimit(r, 100, [0, 25, 50, 75, 100]))],
        20, 100, 500);

    public static Mode Mode(int ppi = 180) => new("fine", "Fine", PrintQuality.High, 720, 720, 8, 1280, 160, true, 0.6, [7, 14], 80, ppi);

    public static Stock Board(double width, double height, SheetLight light = SheetLight.Opaque) => new(
        "test-board", "Invented board", true, StockKind.Board, "foam board", width, height, 5, 0.3, 2, 900, 1, 60, 60,
        GrainDirection.None, light, light == SheetLight.Opaque ? 88 : 35, light == SheetLight.Opaque ? 0 : 60, new Money(1200), 50);

    public static PressDescription Press => new(
        "test-press", "Invented press", true, 2600, 4000, 50, 5, [new("A", 0, 2600)], [0], 4, 7, [],
        [
            .. Enum.GetValues<InkRole>().Select(r => new Channel(r.ToString(), r, r.ToString(), 1280, 360)),
            new Channel("W2", InkRole.White, "W2", 1280, 360),
        ],
        [], new(6, 150, 20, 6, 1.5), new(395, 8, 20, 2), new(8, 3), [Mode()], new(new Money(9000), 40, 30, 50, 12, 4));

    public static ItemRecord Item(
        string id, double width, double height, IReadOnlyList<Layer> layers, double bleed = 0, IReadOnlyList<CodeUse>? codes = null,
        IReadOnlyList<Finishing>? finishing = null, IReadOnlyList<CutPath>? cuts = null, IReadOnlyList<NamedSeparation>? separations = null)
    {
        Item item = new(
            id, "Piece " + id, id + ".pdf", width, height, bleed, 1, "test-board", new(false, false, false, null, null, 100, 0, false),
            finishing ?? [], new DateOnly(2026, 12, 1), 2, 1, null);
        ArtworkPage page = new(
            1, 1, new(width, height), new(0, 0, width, height), new(0, 0, width, height), true, 0, 0, [], null, false, false, false, [], [], [],
            separations ?? [], [], [], cuts ?? [], null, null, codes ?? []);
        ArtworkFile file = new(item.Artwork, ArtworkKind.Pdf, 1, new string('0', 64), "1.6", null, [page, page with { Number = 2 }]);
        return new(item, "T-1", "A customer", ItemState.Planned, "/nowhere/" + item.Artwork, file, [], [], new(layers, false, []), "R-1");
    }

    public static Placement Whole(ItemRecord item, double x, double y, int copy = 1, bool turned = false) =>
        At(item, x, y, turned ? 90 : 0, copy);

    public static Placement At(ItemRecord item, double x, double y, double angle, int copy = 1)
    {
        bool turned = angle is 90 or 270;
        SizeMm size = turned ? item.Item.Printed.Turned() : item.Item.Printed;
        return new(item.Item.Id, copy, new(x, y, size.WidthMm, size.HeightMm), turned, null, angle);
    }

    public static RunContext Run(SizeMm sheet, IReadOnlyList<ItemRecord> items, IReadOnlyList<Placement> placements, PrintCondition? condition = null, int ppi = 180, LayerStack? stack = null)
    {
        Run run = new(
            "R-1", "test-press", "test-condition", "test-board", stack ?? items[0].Stack!, new("fine", [], []),
            [.. items.Select(i => new RunItem(i.Item.Id, i.OrderId, i.Item.Title, 1, i.Item.Due))], [new(sheet, 5, placements, 1, [])],
            new(2600, sheet.WidthMm, sheet.HeightMm, false, [], ["A"], [], 0, "pins"), new(1, 1, 1, 1, []), [],
            new(1.5, 5.3, HeadGap.FromMm(7), [], 80, 400, 2, "", [], [], [], []), new([], default, default, default, default, []), new DateOnly(2026, 12, 1));
        return new("Tidewrack Signs", run, Press, Mode(ppi), Inks, Board(sheet.WidthMm, sheet.HeightMm), condition ?? Condition(), "none.icc", "EUR", items);
    }

    private static string NameOf(InkRole role) => role switch
    {
        InkRole.LightCyan => "Light Cyan",
        InkRole.LightMagenta => "Light Magenta",
        _ => role.ToString(),
    };
}
