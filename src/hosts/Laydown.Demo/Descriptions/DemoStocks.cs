using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Demo.Descriptions;

/// <summary>What stands in the demo shop's racks. Every number is invented within what is usual for the material.</summary>
internal static class DemoStocks
{
    /// <summary>All of it.</summary>
    public static IReadOnlyList<Stock> All() => [.. Boards(), .. Sheets(), .. Rolls()];

    private static IEnumerable<Stock> Boards() =>
    [
        new("fluted-5", "Fluted board, white, 5 mm", true, StockKind.Board, "polypropylene, fluted",
            1220, 2440, 5, 0.3, 12, 1000, 0.9, 120, 80, GrainDirection.AlongLength, SheetLight.Opal, 78, 14, Money.FromUnits(14.20), 46, null, 1800, 0.06, ReorderAt: 20, OrderTo: 60),
        new("fluted-3", "Fluted board, white, 3.5 mm", true, StockKind.Board, "polypropylene, fluted",
            1500, 3000, 3.5, 0.3, 18, 620, 0.8, 120, 80, GrainDirection.AlongWidth, SheetLight.Opal, 72, 20, Money.FromUnits(16.90), 12, null, 1800, 0.06),
        new("foamed-pvc-3", "Foamed PVC board, 3 mm", true, StockKind.Board, "PVC, foamed",
            1220, 2440, 3, 0.2, 8, 1680, 1.1, 75, 55, GrainDirection.None, SheetLight.Opaque, 90, 1, Money.FromUnits(21.50), 18, null, 950, 0.07),
        new("honeycomb-16", "Honeycomb paper board, 16 mm", true, StockKind.Board, "paper, honeycomb",
            1220, 2440, 16, 0.5, 10, 1600, 0.5, 15, 90, GrainDirection.None, SheetLight.Opaque, 82, 0, Money.FromUnits(33.00), 9, null, 1300, 0.06),
        new("foam-blank", "Foam board blank, 480 × 640 mm", true, StockKind.Blank, "polystyrene foam between paper",
            480, 640, 5, 0.3, 1.5, 600, 0.6, 60, 60, GrainDirection.None, SheetLight.Opaque, 86, 2, Money.FromUnits(1.85), 120, null, 1300, 0.04),
        new("foam-blank-small", "Foam board blank, 300 × 400 mm", true, StockKind.Blank, "polystyrene foam between paper",
            300, 400, 5, 0.3, 1, 600, 0.6, 60, 60, GrainDirection.None, SheetLight.Opaque, 86, 2, Money.FromUnits(0.80), 60, null, 1300, 0.04),
    ];

    private static IEnumerable<Stock> Sheets() =>
    [
        new("acrylic-clear-5", "Clear acrylic, 5 mm", true, StockKind.Board, "acrylic, cast",
            1525, 2050, 5, 0.9, 4, 5950, 3.2, 70, 70, GrainDirection.None, SheetLight.Clear, 7.5, 92, Money.FromUnits(118.00), 6, null, 1470, 0.19, ReorderAt: 4, OrderTo: 10),
        new("acrylic-clear-5-offcut", "Clear acrylic, 5 mm, offcut 1010 × 740 mm", true, StockKind.Board, "acrylic, cast",
            1010, 740, 5, 0.9, 4, 5950, 3.2, 70, 70, GrainDirection.None, SheetLight.Clear, 7.5, 92, Money.FromUnits(14.10), 1, "acrylic-clear-5", 1470, 0.19),
        new("acrylic-opal-3", "Opal acrylic, 3 mm", true, StockKind.Board, "acrylic, cast, opal",
            1525, 2050, 3, 0.7, 5, 3570, 3.2, 70, 70, GrainDirection.None, SheetLight.Opal, 55, 38, Money.FromUnits(84.00), 5, null, 1470, 0.19),
        new("aluminium-composite-3", "Aluminium composite, white, 3 mm", true, StockKind.Board, "aluminium over polyethylene",
            1500, 3050, 3, 0.2, 10, 3700, 30, 24, 80, GrainDirection.None, SheetLight.Opaque, 84, 0, Money.FromUnits(58.00), 14, null, 1150, 0.35),
        new("petg-2", "Clear PETG, 2 mm", true, StockKind.Board, "PETG",
            1220, 2440, 2, 0.2, 6, 2540, 2.1, 68, 60, GrainDirection.None, SheetLight.Clear, 8.5, 88, Money.FromUnits(62.00), 7, null, 1250, 0.2),
    ];

    private static IEnumerable<Stock> Rolls() =>
    [
        new("mesh-roll", "Mesh banner, 1600 mm", true, StockKind.Roll, "PVC on polyester mesh, no liner",
            1600, 50_000, 0.4, 0.05, 0, 280, 0, 80, 60, GrainDirection.None, SheetLight.Opal, 62, 26, Money.FromUnits(3.30), 38, null, 1000, 0.17),
        new("banner-roll", "Banner, 1600 mm", true, StockKind.Roll, "PVC on polyester scrim",
            1600, 50_000, 0.45, 0.05, 0, 500, 0, 80, 60, GrainDirection.None, SheetLight.Opal, 85, 12, Money.FromUnits(2.90), 42, null, 1000, 0.17),
        new("wall-film-roll", "Wall film, matt, 1370 mm", true, StockKind.Roll, "PVC film with liner, self-adhesive",
            1370, 50_000, 0.28, 0.03, 0, 330, 0, 80, 60, GrainDirection.None, SheetLight.Opaque, 88, 3, Money.FromUnits(5.40), 34, null, 1000, 0.17),
        new("backlit-roll", "Backlit film, 900 mm", true, StockKind.Roll, "polyester film, diffusing",
            900, 30_000, 0.21, 0.02, 0, 270, 0, 20, 70, GrainDirection.None, SheetLight.Opal, 42, 52, Money.FromUnits(6.10), 21, null, 1170, 0.2),
        new("label-roll", "Label film, white, 610 mm", true, StockKind.Roll, "polypropylene film with liner, self-adhesive",
            610, 50_000, 0.15, 0.02, 0, 190, 0, 120, 60, GrainDirection.None, SheetLight.Opaque, 89, 4, Money.FromUnits(1.75), 47, null, 1750, 0.2),
    ];
}
