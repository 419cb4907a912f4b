using Laydown.Press.Machines;

namespace Laydown.Plan.Runs;

/// <summary>Whether the tanks hold what a run takes: asked anew whenever a run is looked at or let go, because levels change after it is planned.</summary>
public static class InkSupply
{
    // Runs planned before this was asked anew carry such sentences among their refusals; they told the levels of another day.
    private const string OldEnding = "Top up first; it cannot be done while printing.";

    /// <summary>Why a set-up must not be released as things stand now: what was found when it was planned, and ink that is not there.</summary>
    /// <param name="run">The run.</param>
    /// <param name="press">Its press, tanks as last read.</param>
    public static IReadOnlyList<string> RefusalsNow(Run run, PressDescription press)
    {
        ArgumentNullException.ThrowIfNull(run);
        return [.. run.SetUp.Refusals.Where(r => !r.EndsWith(OldEnding, StringComparison.Ordinal)), .. Refusals(press, run.Inks)];
    }

    /// <summary>What the tanks lack for a run, a sentence for each ink; ink that can be topped up while the press prints is no reason to hold a run.</summary>
    /// <param name="press">The press, tanks as last read.</param>
    /// <param name="inks">What the run takes.</param>
    public static IReadOnlyList<string> Refusals(PressDescription press, IReadOnlyList<InkUse> inks)
    {
        ArgumentNullException.ThrowIfNull(press);
        ArgumentNullException.ThrowIfNull(inks);
        return [.. inks.Select(use => Refusal(TanksOf(press, use), use)).OfType<string>()];
    }

    /// <summary>The tanks that feed an ink.</summary>
    /// <param name="press">The press.</param>
    /// <param name="use">The ink.</param>
    public static IReadOnlyList<Tank> TanksOf(PressDescription press, InkUse use) =>
        [.. press.Channels.Where(c => use.ChannelIds.Contains(c.Id, StringComparer.Ordinal)).Select(c => c.TankId).Distinct(StringComparer.Ordinal)
            .Select(id => press.Tanks.FirstOrDefault(t => string.Equals(t.Id, id, StringComparison.Ordinal))).OfType<Tank>()];

    private static string? Refusal(IReadOnlyList<Tank> tanks, InkUse use)
    {
        double usable = tanks.Sum(t => Math.Max(0, t.LevelMl - t.LowMl)), full = tanks.Sum(t => t.CapacityMl - t.LowMl), needed = use.PrintedMl + use.SetUpMl;
        if (needed <= usable || tanks.All(t => t.TopUpWhilePrinting))
            return null;
        string most = needed > full
            ? Invariant($"Even full it gives {full:0} ml: part the run, and top up between the parts; not while printing.")
            : "Top up first, and write the level down; it cannot be done while printing.";
        return Invariant($"{InkWords.Of(use.Role)}: {needed:0} ml are needed and {usable:0} ml can be used before the tank runs low. {most}");
    }
}
