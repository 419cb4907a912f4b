using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Demo.Descriptions;

/// <summary>The demo shop, Tidewrack Signs, and what it charges. Every number is invented.</summary>
internal static class DemoShop
{
    /// <summary>What its file says.</summary>
    public static ShopFile Describe() => new("Tidewrack Signs", true, new(
        Currency: "EUR",
        LabourPerHour: Money.FromUnits(34.00),
        OverheadPercent: 22,
        MarginPercent: 28,
        TaxPercent: 20,
        SpoilPercent: 4,
        FinishingRates:
        [
            new(FinishingKind.CutSquare, 4, 0.35, Money.FromUnits(0.02)),
            new(FinishingKind.CutContour, 9, 0.9, Money.FromUnits(0.06)),
            new(FinishingKind.Drill, 3, 0.4, Money.FromUnits(0.05)),
            new(FinishingKind.Hem, 6, 1.6, Money.FromUnits(0.22)),
            new(FinishingKind.Eyelet, 3, 0.3, Money.FromUnits(0.11)),
            new(FinishingKind.Tape, 2, 0.7, Money.FromUnits(0.38)),
            new(FinishingKind.PolePocket, 8, 2.2, Money.FromUnits(0.30)),
            new(FinishingKind.Laminate, 8, 2.5, Money.FromUnits(3.40)),
            new(FinishingKind.Mount, 6, 5, Money.FromUnits(1.20)),
            new(FinishingKind.Pack, 3, 0.5, Money.FromUnits(0.45)),
        ],
        QuoteValidDays: 30),
        Releasers: ["Marram Holt", "Ines Alder"]);
}
