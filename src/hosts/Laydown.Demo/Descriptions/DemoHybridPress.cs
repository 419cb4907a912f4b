using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Demo.Descriptions;

/// <summary>The demo's large press: belt of 2.6 m for boards, blanks and rolls, nine channels. Every number is invented.</summary>
internal static class DemoHybridPress
{
    private const int NozzlesPerInch = 180;
    private const int Nozzles = 720;

    /// <summary>Its description.</summary>
    public static PressDescription Describe() => Cared(new(
        Id: "long-belt",
        Name: "Long belt (invented)",
        Invented: true,
        BeltWidthMm: 2600,
        MaxSheetLengthMm: 3200,
        MaxThicknessMm: 45,
        EdgeMarginMm: 5,
        Zones: Zones(("A", 310), ("B", 340), ("C", 420), ("D", 610), ("E", 500), ("F", 420)),
        Lays: [20, 330, 670, 880, 1090, 1400, 1700, 1950, 2200],
        MaxLanes: 4,
        MaxLayers: 7,
        Rolls: [new("near", 1660, 260, 90, 0), new("far", 900, 220, 45, 1700)],
        Channels: Channels(),
        Tanks: Tanks(),
        Carriage: new(AccelerationMPerS2: 6, OverRunMm: 300, FiringKhz: 20, DropSpeedMPerS: 6.2, ReturnSpeedMPerS: 1.6),
        Lamp: new(WavelengthNm: 385, IrradianceWPerCm2: 9, WindowMm: 24, Count: 2),
        Vacuum: new(FullKpa: 3.6, OpenAreaPercent: 1.7),
        Modes: Modes(),
        Costs: new(Money.FromUnits(64.00), LoadSeconds: 42, UnloadSeconds: 24, LoadOverlapPercent: 80, SetUpMinutes: 11, SetUpInkMl: 1.4),
        Placement: new(FeedScaleUmPerM: 50, FeedJitterUm: 2, TwoWayUm: 12),
        NozzleStates: [new("Y", [411], []), new("C", [], [new(96, 8)])],
        FrontPins: [.. Enumerable.Range(0, 52).Select(i => 30.0 + (50 * i))]));

    private static PressDescription Cared(PressDescription press) =>
        press with { Care = PressCare.Usual(press) with { LongStop = new(FluidPerLitre: Money.FromUnits(31.00)) } };

    /// <summary>Zones one beside the other from the belt's origin.</summary>
    internal static IReadOnlyList<VacuumZone> Zones(params ReadOnlySpan<(string Id, double WidthMm)> widths)
    {
        List<VacuumZone> zones = [];
        foreach ((string id, double width) in widths)
            zones.Add(new(id, zones.Count == 0 ? 0 : zones[^1].EndMm, width));
        return zones;
    }

    private static List<Channel> Channels() =>
    [
        Channel("C", InkRole.Cyan, "C"),
        Channel("M", InkRole.Magenta, "M"),
        Channel("Y", InkRole.Yellow, "Y"),
        Channel("K", InkRole.Black, "K"),
        Channel("LC", InkRole.LightCyan, "LC"),
        Channel("LM", InkRole.LightMagenta, "LM"),
        Channel("W1", InkRole.White, "W"),
        Channel("W2", InkRole.White, "W"),
        Channel("CL", InkRole.Clear, "CL"),
    ];

    private static Channel Channel(string id, InkRole role, string tank) => new(id, role, tank, Nozzles, NozzlesPerInch);

    private static List<Tank> Tanks() =>
    [
        new("C", 2400, 350, 1710, TopUpWhilePrinting: true, Circulates: false),
        new("M", 2400, 350, 1480, TopUpWhilePrinting: true, Circulates: false),
        new("Y", 2400, 350, 1920, TopUpWhilePrinting: true, Circulates: false),
        new("K", 2400, 350, 640, TopUpWhilePrinting: true, Circulates: false),
        new("LC", 2400, 350, 1130, TopUpWhilePrinting: true, Circulates: false),
        new("LM", 2400, 350, 980, TopUpWhilePrinting: true, Circulates: false),
        new("W", 3600, 600, 2250, TopUpWhilePrinting: false, Circulates: true),
        new("CL", 1800, 300, 1300, TopUpWhilePrinting: false, Circulates: false),
    ];

    // Rows between nozzles S = feed dpi / 180. Each mode keeps gcd(feed rows, S) = 1 and nozzles used = passes × feed rows.
    private static List<Mode> Modes() =>
    [
        new("poster-draft", "Poster draft", PrintQuality.Draft, 360, 360, 1, 719, 719, true, 1.3, [10, 20, 30], 70, 90),
        new("far-wall", "Far wall", PrintQuality.Draft, 360, 540, 1, 718, 718, true, 1.3, [10, 20, 30], 75, 90),
        new("everyday", "Everyday", PrintQuality.Normal, 540, 540, 2, 718, 359, true, 1.2, [7, 14, 21], 80, 135),
        new("fine", "Fine", PrintQuality.High, 720, 720, 2, 718, 359, true, 1.0, [7, 14], 85, 180),
        new("lit-panel", "Lit panel", PrintQuality.High, 720, 720, 4, 716, 179, false, 0.9, [7, 14], 70, 180),
        new("fine-slow", "Fine slow", PrintQuality.High, 720, 1080, 4, 716, 179, false, 0.9, [5, 10], 60, 360),
    ];
}
