using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>Whether a press description can be worked with: every mode covers every row on every channel and fires in time.</summary>
public static class PressCheck
{
    /// <summary>All faults of <paramref name="press"/>; empty when it is sound.</summary>
    /// <param name="press">The press as read.</param>
    /// <param name="file">File it came from, for the faults.</param>
    public static IReadOnlyList<InputFault> Of(PressDescription press, string file) =>
        [.. press.Modes.SelectMany((mode, i) => OfMode(press, mode, file, Invariant($"/modes/{i}"))), .. OfParts(press, file), .. NozzleFaults.Of(press, file)];

    private static IEnumerable<InputFault> OfMode(PressDescription press, Mode mode, string file, string path)
    {
        // Channels with the same head give the same answer, so each kind of head is asked once.
        foreach (Channel channel in press.Channels.DistinctBy(c => (c.Nozzles, c.NozzlesPerInch)))
            foreach (InputFault fault in Coverage.Check(mode, channel, file, path).Faults)
                yield return fault;
        foreach (InputFault fault in Firing.Check(mode, press.Carriage, file, path).Faults)
            yield return fault;
        if (mode.DropsPl.Count == 0 || mode.DropsPl.Any(d => !(d > 0)) || !mode.DropsPl.SequenceEqual(mode.DropsPl.Order()))
            yield return new(file, null, path + "/dropsPl", string.Join(", ", mode.DropsPl.Select(d => Invariant($"{d}"))), "drop volumes over 0 pl, smallest first");
        if (mode.ContonePpi < 1 || mode.ScanDpi % mode.ContonePpi != 0 || mode.FeedDpi % mode.ContonePpi != 0)
            yield return new(file, null, path + "/contonePpi", Invariant($"{mode.ContonePpi} ppi"), Invariant($"a divisor of {mode.ScanDpi} and {mode.FeedDpi} dpi"));
    }

    private static IEnumerable<InputFault> OfParts(PressDescription press, string file)
    {
        for (int i = 0; i < press.Channels.Count; i++)
            if (!press.Tanks.Any(t => string.Equals(t.Id, press.Channels[i].TankId, StringComparison.Ordinal)))
                yield return new(file, null, Invariant($"/channels/{i}/tankId"), press.Channels[i].TankId, "the id of a tank of this press");
        for (int i = 0; i < press.Zones.Count; i++)
        {
            double after = i == 0 ? 0 : press.Zones[i - 1].EndMm;
            if (press.Zones[i].StartMm < after - 1e-6 || press.Zones[i].EndMm > press.BeltWidthMm + 1e-6)
                yield return new(file, null, Invariant($"/zones/{i}"), Invariant($"{press.Zones[i].StartMm} to {press.Zones[i].EndMm} mm"), Invariant($"from {after} mm on, within the belt of {press.BeltWidthMm} mm"));
        }
    }
}
