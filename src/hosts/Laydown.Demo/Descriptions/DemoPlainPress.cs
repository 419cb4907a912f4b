using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Demo.Descriptions;

/// <summary>The demo's small press: table-wide belt of 1.6 m, boards only, four colours and white. Every number is invented.</summary>
internal static class DemoPlainPress
{
    /// <summary>Its description.</summary>
    public static PressDescription Describe() => new(
        Id: "short-belt",
        Name: "Short belt (invented)",
        Invented: true,
        BeltWidthMm: 1600,
        MaxSheetLengthMm: 3100,
        MaxThicknessMm: 30,
        EdgeMarginMm: 8,
        Zones: DemoHybridPress.Zones(("left", 520), ("middle", 380), ("right", 700)),
        Lays: [15, 535, 915],
        MaxLanes: 0,
        MaxLayers: 2,
        Rolls: [],
        Channels:
        [
            new("C", InkRole.Cyan, "C", 600, 150),
            new("M", InkRole.Magenta, "M", 600, 150),
            new("Y", InkRole.Yellow, "Y", 600, 150),
            new("K", InkRole.Black, "K", 600, 150),
            new("W", InkRole.White, "W", 600, 150),
        ],
        Tanks:
        [
            new("C", 1500, 250, 900, TopUpWhilePrinting: true, Circulates: false),
            new("M", 1500, 250, 1210, TopUpWhilePrinting: true, Circulates: false),
            new("Y", 1500, 250, 1060, TopUpWhilePrinting: true, Circulates: false),
            new("K", 1500, 250, 700, TopUpWhilePrinting: true, Circulates: false),
            new("W", 2000, 400, 1500, TopUpWhilePrinting: false, Circulates: true),
        ],
        Carriage: new(AccelerationMPerS2: 4, OverRunMm: 220, FiringKhz: 16, DropSpeedMPerS: 5.5, ReturnSpeedMPerS: 1.1),
        Lamp: new(WavelengthNm: 395, IrradianceWPerCm2: 7, WindowMm: 20, Count: 2),
        Vacuum: new(FullKpa: 2.4, OpenAreaPercent: 2.2),
        Modes:
        [
            new("quick-look", "Quick look", PrintQuality.Draft, 300, 450, 1, 599, 599, true, 1.0, [18, 36], 80, 75),
            new("shop-floor", "Shop floor", PrintQuality.Normal, 450, 600, 2, 598, 299, true, 0.9, [8, 16, 24], 85, 150),
            new("close-view", "Close view", PrintQuality.High, 600, 600, 4, 596, 149, false, 0.8, [8, 16], 80, 200),
        ],
        Costs: new(Money.FromUnits(38.50), LoadSeconds: 75, UnloadSeconds: 45, LoadOverlapPercent: 0, SetUpMinutes: 8, SetUpInkMl: 1.1),
        Placement: new(FeedScaleUmPerM: -80, FeedJitterUm: 3, TwoWayUm: 20));
}
