namespace Laydown.Press.Machines;

/// <summary>How a press is kept fit: care tasks and what long stops need.</summary>
/// <param name="Rules">Care tasks, each id once.</param>
/// <param name="LongStop">Long stops.</param>
/// <param name="PackMl">Ink in one bottle or bag as bought, ml.</param>
/// <param name="TopUpMinutes">Topping one tank up, minutes.</param>
/// <param name="LeadDays">Days from ordering ink to having it.</param>
public sealed record PressCare(
    IReadOnlyList<CareRule> Rules, LongStopRules LongStop, double PackMl = 1000, double TopUpMinutes = 4, int LeadDays = 3)
{
    private const int DayHours = 24;
    private const string Operator = "operator";

    /// <summary>The care of a press whose description names none: common practice, no source, but for the clean before any automatic one after a stop. [Ballreich2020]</summary>
    /// <param name="press">The press.</param>
    public static PressCare Usual(PressDescription press)
    {
        List<CareRule> rules =
        [
            new("stop-devices", CareKind.StopDevices, "Try the stop devices and guards", 3, Operator, EveryDays: 1),
            new("nozzle-pattern", CareKind.NozzleCheck, "Print and read the nozzle pattern", 4, Operator, EveryPrintHours: 4, EveryDays: 1, InkMlPerLine: 0.4),
            new("clean-heads", CareKind.Clean, "Clean wiper, caps and head edges by hand", 12, Operator, EveryPrintHours: 16, EveryDays: 7, InkMlPerLine: 2),
            new("waste-tank", CareKind.WasteTank, "Empty the waste tank", 6, Operator, EveryMl: 4000, EveryDays: 14),
            new("lamps", CareKind.Lamps, "Measure the lamps and wipe their windows, lamps off and cold", 20, Operator, EveryDays: 30),
        ];
        foreach (Tank tank in press.Tanks)
        {
            rules.Add(new(Invariant($"filter-{tank.Id.ToLowerInvariant()}"), CareKind.Filter, Invariant($"Change the ink filter of {tank.Id}"), 15, Operator, EveryMl: 20_000, EveryDays: 180, TankId: tank.Id));
            if (!press.Channels.Any(c => c.TankId == tank.Id && c.Role == Inks.InkRole.White))
                continue;
            rules.Add(tank.Circulates
                ? new(Invariant($"circulation-{tank.Id.ToLowerInvariant()}"), CareKind.Circulate, Invariant($"See that {tank.Id} circulates; the press stays on"), 2, Operator, EveryDays: 1, TankId: tank.Id)
                : new(Invariant($"stir-{tank.Id.ToLowerInvariant()}"), CareKind.Agitate, Invariant($"Stir {tank.Id} and purge its line"), 6, Operator, EveryHours: DayHours, TankId: tank.Id, InkMlPerLine: 4, WhileIdle: true));
        }

        return new(rules, new());
    }
}
