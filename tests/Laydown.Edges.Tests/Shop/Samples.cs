using Laydown.Artwork.Pages;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Run = Laydown.Plan.Runs.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Invented records with something in every field, so that a field that is lost shows.</summary>
internal static class Samples
{
    public static Item Item(string id, string artwork = "birds.pdf", string stockId = "opal-acrylic-5") => new(
        id, "Birds “by night”", artwork, 1000.5, 700.25, 3, 2, stockId,
        new BuildWish(true, true, true, WhiteSource.NamedSeparation, "White", 110, 0.25, true),
        [new(FinishingKind.Drill, 4), new(FinishingKind.CutContour, 1)],
        new DateOnly(2026, 12, 4), 1.5, 10, true);

    public static Order Order(string id, params Item[] items) =>
        new(id, "Saltmarsh Observatory", new DateOnly(2026, 11, 25), "Before the opening, please.", items);

    public static ArtworkFile Artwork(string name = "birds.pdf") => new(
        name, ArtworkKind.Pdf, 123456, new string('a', 64), "1.6", "Coated, invented",
        [
            new ArtworkPage(
                1, 10, new SizeMm(1030, 730), new RectMm(15, 15, 1000, 700), new RectMm(12, 12, 1006, 706), true, 0, 0,
                ["DeviceCMYK", "Separation"], "Demo profile", true, true, true, ["Notes"],
                [new(2000, 1400, new RectMm(15, 15, 1000, 700), 50.8, "ICCBased(3)", 8, 72)],
                [new("ABCDEF+Lato-Bold", "TrueType", true)],
                [new("White", SeparationRole.White, "White/White", true)],
                [new(6.5, "tide", new RectMm(20, 20, 12, 3))],
                [new(0.07, new RectMm(30, 30, 200, 0))],
                [new([new PointMm(0, 0), new PointMm(10, 0), new PointMm(10, 5)], true, "Cutting")],
                312.5, new RectMm(40, 40, 5, 5),
                [new("EAN-13", "4006381333931", new RectMm(50, 50, 37, 26), 0.33, 11)]),
        ]);

    public static LayerStack Stack() => new(
        [
            new(SheetFace.Second, InkGroup.Colour, null, null, 1, 100, 0, true),
            new(SheetFace.Second, InkGroup.White, WhiteSource.NamedSeparation, "White", 1, 110, 0.25, true),
            new(SheetFace.Second, InkGroup.Colour, null, null, 2, 100, 0, true),
        ],
        true, ["Seen through the sheet, so it is mirrored."]);

    public static ItemRecord ItemRecord(string id, ItemState state, string orderId = "TW-9001", string? runId = null) => new(
        Item(id), orderId, "Saltmarsh Observatory", state, "/shop/orders/TW-9001/birds.pdf", Artwork(),
        [new("birds.pdf", 1, "TrimBox", "none", "a trim box")],
        [new("image-ppi", Severity.Warn, 1, new RectMm(1, 2, 3, 4), "A picture is coarse.", "50.8 ppi", "at least 100 ppi", "none", "from memory")],
        Stack(), runId);

    public static OrderRecord OrderRecord(string id, params ItemRecord[] items) => new(Order(id, [.. items.Select(i => i.Item)]), items);

    public static Run Run(string id, params string[] itemIds) => new(
        id, "hybrid", "hybrid-opal", "opal-acrylic-5", Stack(),
        new ModeChoice("fine", ["Small text is read from 1.5 m."], [new("fast", "Too coarse for 6.5 pt.")]),
        [.. itemIds.Select(i => new RunItem(i, "TW-9001", "Birds", 2, new DateOnly(2026, 12, 4)))],
        [
            new SheetLayout(
                new SizeMm(1220, 2440), 5,
                [new(itemIds[0], 1, new RectMm(5, 5, 1006, 706), true, new RectMm(0, 0, 500, 700))], 2, [new RectMm(5, 800, 1200, 1600)]),
        ],
        new BeltPlace(2600, 2440, 1220, true, [new(1, 100, 1220, 2)], ["A", "B"], ["C"], 12.5, "pins"),
        new RunTime(10, 14.5, 3.25, 480, [new("scan", 1.2, "s", "2.44 m / 2 m/s", "demo data")]),
        [new InkUse(InkRole.White, ["W1", "W2"], 22.5, 4, 61.5)],
        new SetUp(
            1.5, 6.2, HeadGap.FromMm(7.7), ["Measure the thickness at four corners."], 80, 310, 17.7, "Zones A and B.",
            ["Bow not measured."], ["White opacity."], ["UV light: keep the guard shut."],
            [new("gap", 7.7, "mm", "6.2 + 1.5", "common practice, no source")]),
        new CostSheet(
            [new("White ink", new Money(1234), "22.5 ml × 0.548", itemIds[0])],
            new Money(1234), new Money(123), new Money(456), new Money(1813), [new(itemIds[0], 2, new Money(1813))]),
        new DateOnly(2026, 12, 4));

    public static RunRecord RunRecord(string id, RunState state, params string[] itemIds) => new(
        Run(id, itemIds), state, new string('b', 64), id, [new("run.json", "run", 42, new string('c', 64))], "The disk was full.");
}
