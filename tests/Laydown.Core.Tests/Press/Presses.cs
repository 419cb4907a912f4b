using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Core.Tests.Press;

/// <summary>Small invented presses, inks and stocks for tests; numbers chosen for easy sums.</summary>
internal static class Presses
{
    public static Channel Head(int nozzles = 1000, int perInch = 180, InkRole role = InkRole.Cyan) =>
        new(role.ToString(), role, "T-" + role, nozzles, perInch);

    public static Mode Mode(string id = "m", int dpi = 720, int passes = 4, int feedRows = 179, int? nozzles = null, bool twoWay = true,
        double speed = 1.0, double dropPl = 14, double lamp = 100, PrintQuality quality = PrintQuality.Normal) =>
        new(id, "Mode " + id, quality, dpi, dpi, passes, nozzles ?? (passes * feedRows), feedRows, twoWay, speed, [dropPl / 2, dropPl], lamp, 60);

    /// <summary>Head 100 mm long with as many nozzles as rows, so that one pass steps the whole head: the toy machine of plain sums.</summary>
    public static PressDescription Toy(params Mode[] modes) => Of([new Channel("K", InkRole.Black, "T-Black", 100_000, 254)], modes);

    public static PressDescription Hybrid(params Mode[] modes) => Of(
        [.. new[] { InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black, InkRole.White, InkRole.Clear }.Select(r => Head(role: r)),
            new Channel("W2", InkRole.White, "T-White", 1000, 180)], modes);

    public static PressDescription Plain(params Mode[] modes) => Of(
        [.. new[] { InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black }.Select(r => Head(role: r))], modes) with
    { Id = "plain", Name = "Plain press", MaxLayers = 1, BeltWidthMm = 1600, MaxLanes = 0, Rolls = [], Costs = Costs(30) };

    public static PressDescription Of(IReadOnlyList<Channel> channels, params Mode[] modes) => new(
        "toy", "Toy press", true, 2600, 4000, 50, 5,
        [new("A", 0, 1000), new("B", 1000, 1600)], [0, 500], 4, 5, [new RollStation("R1", 1620, 250, 100, 100)],
        channels, [.. channels.Select(c => c.TankId).Distinct().Select(t => new Tank(t, 2000, 200, 1500, true, false))],
        new Carriage(6, 300, 20, 6, 1.5), new Lamp(395, 8, 20, 2), new Vacuum(4, 5), modes, Costs(60));

    public static PressCosts Costs(double perHour) => new(Money.FromUnits(perHour), 30, 20, 60, 12, 5);

    public static Stock Board(double thickness = 3, double bow = 10, SheetLight light = SheetLight.Opaque, double price = 20) => new(
        "board", "Test board", true, StockKind.Board, "acrylic, cast", 1220, 2440, thickness, 0.3, bow, 1190 * thickness, 3.2, 70, 70,
        GrainDirection.None, light, 90, light == SheetLight.Opaque ? 0 : 90, Money.FromUnits(price), 100);

    public static InkSet Inks() => new("inks", "Test inks", true,
        [.. Enum.GetValues<InkRole>().Select(r => new Ink(r, r.ToString(), 1.1, new Money(8000), 1.2, 1, 200))]);

    public static PrintCondition Condition(string pressId = "toy", params string[] modes) => new(
        "c", "Test condition", true, pressId, modes, "inks", ["board"], "x.icc", 240, [], 40, 100, 500);
}
