using Laydown.Layout.Panels;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;

namespace Laydown.Demo.Orders;

/// <summary>The seven orders of the demo day. Customers, places and goods are invented.</summary>
internal static class DemoOrders
{
    private static readonly BuildWish Plain = new(false, false, false, null, null, 0, 0, false);

    /// <summary>An order with what draws its artwork.</summary>
    public sealed record Drawn(Order Order, Action<string> Draw);

    /// <summary>All orders, with days counted from <paramref name="day"/>.</summary>
    public static IReadOnlyList<Drawn> All(DateOnly day) =>
    [
        new(Trail(day), TrailSigns.Write),
        new(Cards(day), BirdCards.Write),
        new(Panel(day), NightPanel.Write),
        new(Wall(day), WallGraphic.Write),
        new(Night(day), Banners.Write),
        new(Hanging(day), CutBirds.Write),
        new(Labels(day), folder =>
        {
            ShelfLabels.Write(folder);
            CutBirds.Sticker(folder);
        }),
    ];

    private static Order Trail(DateOnly day) => new("TW-1041", "Friends of the Sluice Path (invented)", day.AddDays(-4), "The stakes go into the flutes, so please upright along them.",
    [
        Sign("TW-1041-1", "Trail sign 1, the old sluice", "trail-sluice.pdf", 8, day),
        Sign("TW-1041-2", "Trail sign 2, the reed hide", "trail-hide.pdf", 8, day),
        Sign("TW-1041-3", "Trail sign 3, tide pools", "trail-pools.pdf", 6, day),
    ]);

    private static Item Sign(string id, string title, string artwork, int quantity, DateOnly day) => new(
        id, title, artwork, 580, 400, 5, quantity, "fluted-5", Plain, [new(FinishingKind.CutSquare, 1), new(FinishingKind.Pack, 1)], day.AddDays(3), 1.5, 1, true);

    private static Order Cards(DateOnly day) => new("TW-1042", "Saltmarsh Observatory, visitor centre (invented)", day.AddDays(-3), "Forty cards for the school weeks and two dozen small ones, on the boards we had last year.",
    [
        Card("TW-1042-1", "Bird card, avocet", "card-avocet.png", day),
        Card("TW-1042-2", "Bird card, common tern", "card-tern.tif", day),
        Card("TW-1042-3", "Small card, the flock", "card-flock.png", day) with { WidthMm = 300, HeightMm = 400, Quantity = 24, StockId = "foam-blank-small" },
    ]);

    private static Item Card(string id, string title, string artwork, DateOnly day) => new(
        id, title, artwork, 480, 640, 0, 20, "foam-blank", Plain, [new(FinishingKind.Pack, 1)], day.AddDays(6), 1, 1, null);

    private static Order Panel(DateOnly day) => new("TW-1043", "Saltmarsh Observatory, visitor centre (invented)", day.AddDays(-6), "Day picture as you come in; at dusk we switch the lamp on and the birds light up.",
    [
        new("TW-1043-1", "Day and night panel", "night-panel.pdf", 900, 600, 4, 1, "acrylic-clear-5",
            new(SeenThroughSheet: true, Lit: true, DayNight: true, WhiteSource.NamedSeparation, "White", 200, 0, Clear: false),
            [new(FinishingKind.CutSquare, 1), new(FinishingKind.Drill, 4), new(FinishingKind.Pack, 1)], day.AddDays(2), 1.5, 1, null),
    ]);

    private static Order Wall(DateOnly day) => new("TW-1044", "Saltmarsh Observatory, visitor centre (invented)", day.AddDays(-2), "Entrance hall, 6.4 m; the file is drawn 1:10.",
    [
        new("TW-1044-1", "Wall of the entrance hall", "wall-estuary-1to10.pdf", 6400, 2400, 30, 1, "wall-film-roll", Plain,
            [new(FinishingKind.CutSquare, 1)], day.AddDays(8), 3, 10, null)
        {
            // No seam through a bird: the flock's leader and the three waders.
            Panels = new(OverlapLeastMm: 20, OverlapMostMm: 30, Widths: PanelWidths.Free, LeastWidthMm: 900),
            SeamKeepOuts = [Bird(3900, 720, 340), Bird(4520, 800, 260), Bird(3220, 840, 220), Bird(3180, 1580, 320)],
            Marks = new(Register: true),
        },
    ]);

    private static Order Night(DateOnly day) => new("TW-1045", "Tern Wardens' Hut (invented)", day.AddDays(-5), null,
    [
        new("TW-1045-1", "Mesh banner, night of the terns", "tern-night-banner.tif", 3600, 1500, 25, 1, "mesh-roll", Plain,
            [new(FinishingKind.Hem, 1, WidthMm: 25), new(FinishingKind.Eyelet, 22, InsetMm: 15)], day.AddDays(7), 6, 1, null)
        {
            Marks = new(Cut: true),
        },
        new("TW-1045-2", "Banner, open day", "open-day.jpg", 2000, 800, 20, 2, "banner-roll", Plain,
            [new(FinishingKind.Hem, 1), new(FinishingKind.Eyelet, 10)], day.AddDays(3), 4, 1, null),
    ]);

    private static SeamKeepOut Bird(double x, double y, double size) => new(new(x - (size / 2), y - (size / 2), size, size), 100, What: "bird");

    private static Order Hanging(DateOnly day) => new("TW-1046", "Saltmarsh Observatory, shop (invented)", day.AddDays(-1), "To hang in the window, seen against the sky.",
    [
        Bird("TW-1046-1", "Hanging tern", "hanging-tern.pdf", 380, 280, 12, day),
        Bird("TW-1046-2", "Hanging avocet", "hanging-avocet.pdf", 300, 300, 8, day),
    ]);

    private static Item Bird(string id, string title, string artwork, double width, double height, int quantity, DateOnly day) => new(
        id, title, artwork, width, height, 0, quantity, "petg-2",
        new(SeenThroughSheet: false, Lit: false, DayNight: false, WhiteSource.NamedSeparation, "White", 100, 0, Clear: false),
        [new(FinishingKind.CutContour, 1), new(FinishingKind.Drill, 1)], day.AddDays(9), 1, 1, null);

    private static Order Labels(DateOnly day) => new("TW-1047", "Saltmarsh Observatory, shop (invented)", day.AddDays(-1), "Prices from January.",
    [
        Label("TW-1047-1", "Shelf label, marsh mint tea", "label-tea.svg", 0, 36, day),
        Label("TW-1047-2", "Shelf label, samphire salt", "label-salt.pdf", 2, 36, day),
        Label("TW-1047-3", "Shelf label, lucky pebbles", "label-pebbles.pdf", 2, 24, day),
        Label("TW-1047-4", "Shelf label, heather honey", "label-honey.pdf", 2, 24, day),
        Label("TW-1047-5", "Sticker, tern", "sticker-tern.pdf", 0, 30, day) with { WidthMm = 160, HeightMm = 120, Finishing = [new(FinishingKind.CutContour, 1)] },
    ]);

    private static Item Label(string id, string title, string artwork, double bleed, int quantity, DateOnly day) => new(
        id, title, artwork, 90, 40, bleed, quantity, "label-roll", Plain, [new(FinishingKind.CutSquare, 1)], day.AddDays(10), 0.5, 1, null);
}
