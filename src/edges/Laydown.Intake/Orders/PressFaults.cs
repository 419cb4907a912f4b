using Laydown.Measures;
using Laydown.Press.Machines;

namespace Laydown.Intake.Orders;

/// <summary>What in a press description contradicts itself.</summary>
internal static class PressFaults
{
    private const double SlackMm = 1e-6;

    /// <summary>Every fault, each with JSON path.</summary>
    public static IEnumerable<InputFault> Of(string file, PressDescription press) =>
        [
            .. Zones(file, press),
            .. Places(file, press),
            .. Channels(file, press),
            .. Tanks(file, press),
            .. press.Modes.Index().SelectMany(m => ModeFaults(file, press, m.Index, m.Item)),
            .. NozzleFaults.Of(press, file),
            .. CareFaults.Of(press, file),
        ];

    private static IEnumerable<InputFault> Zones(string file, PressDescription press)
    {
        double reached = 0;
        foreach ((int i, VacuumZone zone) in press.Zones.Index())
        {
            if (zone.StartMm < reached - SlackMm)
                yield return new(file, null, Invariant($"/zones/{i}/startMm"), Invariant($"{zone.StartMm} mm"), Invariant($"at least {reached} mm, where the zone before it ends"));
            if (zone.EndMm > press.BeltWidthMm + SlackMm)
                yield return new(file, null, Invariant($"/zones/{i}/widthMm"), Invariant($"an end at {zone.EndMm} mm"), Invariant($"an end within the belt of {press.BeltWidthMm} mm"));
            if (press.Zones.Take(i).Any(z => z.Id == zone.Id))
                yield return new(file, null, Invariant($"/zones/{i}/id"), zone.Id, "each id once");
            reached = Math.Max(reached, zone.EndMm);
        }
    }

    private static IEnumerable<InputFault> Places(string file, PressDescription press)
    {
        foreach ((int i, double lay) in press.Lays.Index())
        {
            if (lay > press.BeltWidthMm || (i > 0 && lay <= press.Lays[i - 1]))
                yield return new(file, null, Invariant($"/lays/{i}"), Invariant($"{lay} mm"), Invariant($"ascending places within the belt of {press.BeltWidthMm} mm"));
        }

        foreach ((int i, double pin) in (press.FrontPins ?? []).Index())
        {
            if (pin > press.BeltWidthMm || (i > 0 && pin <= press.FrontPins![i - 1]))
                yield return new(file, null, Invariant($"/frontPins/{i}"), Invariant($"{pin} mm"), Invariant($"ascending places within the belt of {press.BeltWidthMm} mm"));
        }

        if (press.RollWeb is { LongestSectionMm: > 0 } web && web.LongestSectionMm < web.LeastSectionMm)
            yield return new(file, null, "/rollWeb/longestSectionMm", Invariant($"{web.LongestSectionMm} mm"), Invariant($"0 for none, or at least the least section, {web.LeastSectionMm} mm"));
        foreach ((int i, RollStation roll) in press.Rolls.Index())
        {
            if (roll.StartMm + roll.MaxWidthMm > press.BeltWidthMm + SlackMm)
                yield return new(file, null, Invariant($"/rolls/{i}/startMm"), Invariant($"a strip to {roll.StartMm + roll.MaxWidthMm} mm"), Invariant($"a strip within the belt of {press.BeltWidthMm} mm"));
            if (press.Rolls.Take(i).Any(r => r.Id == roll.Id))
                yield return new(file, null, Invariant($"/rolls/{i}/id"), roll.Id, "each id once");
        }
    }

    private static IEnumerable<InputFault> Channels(string file, PressDescription press)
    {
        foreach ((int i, Channel channel) in press.Channels.Index())
        {
            if (press.Tanks.All(t => t.Id != channel.TankId))
                yield return new(file, null, Invariant($"/channels/{i}/tankId"), channel.TankId, "one of " + string.Join(", ", press.Tanks.Select(t => t.Id)));
            if (press.Channels.Take(i).Any(c => c.Id == channel.Id))
                yield return new(file, null, Invariant($"/channels/{i}/id"), channel.Id, "each id once");
        }
    }

    private static IEnumerable<InputFault> Tanks(string file, PressDescription press)
    {
        foreach ((int i, Tank tank) in press.Tanks.Index())
        {
            if (tank.LevelMl > tank.CapacityMl)
                yield return new(file, null, Invariant($"/tanks/{i}/levelMl"), Invariant($"{tank.LevelMl} ml"), Invariant($"at most the capacity, {tank.CapacityMl} ml"));
            if (tank.LowMl >= tank.CapacityMl)
                yield return new(file, null, Invariant($"/tanks/{i}/lowMl"), Invariant($"{tank.LowMl} ml"), Invariant($"under the capacity, {tank.CapacityMl} ml"));
            if (press.Tanks.Take(i).Any(t => t.Id == tank.Id))
                yield return new(file, null, Invariant($"/tanks/{i}/id"), tank.Id, "each id once");
        }
    }

    private static IEnumerable<InputFault> ModeFaults(string file, PressDescription press, int index, Mode mode)
    {
        string path = Invariant($"/modes/{index}");
        if (press.Modes.Take(index).Any(m => m.Id == mode.Id))
            yield return new(file, null, path + "/id", mode.Id, "each id once");
        if (mode.ScanDpi % mode.ContonePpi != 0 || mode.FeedDpi % mode.ContonePpi != 0)
            yield return new(file, null, path + "/contonePpi", Invariant($"{mode.ContonePpi} ppi"), Invariant($"a divisor of both {mode.ScanDpi} and {mode.FeedDpi} dpi"));
        if (mode.DropsPl.Zip(mode.DropsPl.Skip(1)).Any(p => p.Second <= p.First))
            yield return new(file, null, path + "/dropsPl", string.Join(", ", mode.DropsPl), "volumes from the smallest to the largest");
        foreach (InputFault fault in Coverage(file, press, path, mode))
            yield return fault;

        double limit = Firing.FastestMPerS(mode, press.Carriage);
        if (mode.SpeedMPerS > limit)
            yield return new(file, null, path + "/speedMPerS", Invariant($"{mode.SpeedMPerS} m/s"), Invariant($"at most {limit:0.###} m/s, as fast as the nozzles fire"));
    }

    /// <summary>Rows missed or met too often, once for each kind of head.</summary>
    private static IEnumerable<InputFault> Coverage(string file, PressDescription press, string path, Mode mode) =>
        press.Channels.DistinctBy(c => (c.Nozzles, c.NozzlesPerInch))
            .SelectMany(channel => Laydown.Press.Machines.Coverage.Check(mode, channel, file, path).Faults)
            .Select(fault => fault with { Field = fault.Field.Split(' ')[0] });
}
