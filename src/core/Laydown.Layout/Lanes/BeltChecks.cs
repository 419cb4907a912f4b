using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Lanes;

/// <summary>What all ways of laying on the belt share.</summary>
internal static class BeltChecks
{
    /// <summary>Stops a belt that cannot be reckoned with.</summary>
    internal static void Demand(Belt belt)
    {
        ArgumentNullException.ThrowIfNull(belt);
        Bounds.Within(belt.WidthMm, 1, 100_000, nameof(belt));
        Bounds.Within(belt.LaneGapMm, 0, 10_000, nameof(belt));
        Bounds.Within(belt.Zones.Count, 0, 16, nameof(belt));
        Bounds.NotEmpty(belt.LaysMm, nameof(belt));
        IReadOnlyList<BeltZone> sorted = [.. belt.Zones.OrderBy(z => z.StartMm)];
        for (int i = 1; i < sorted.Count; i++)
            if (sorted[i].StartMm < sorted[i - 1].EndMm - 1e-6)
                throw new ArgumentException(Invariant($"Zones {sorted[i - 1].Id} and {sorted[i].Id} overlap."), nameof(belt));
    }

    /// <summary>The place of a choice.</summary>
    internal static BeltPlace Place(Belt belt, SizeMm lying, bool turned, LaneChoice choice, int count, string frontLay)
    {
        int lanes = choice.StartsMm.Count;
        return new(
            belt.WidthMm,
            lying.WidthMm,
            lying.HeightMm,
            turned,
            [.. choice.StartsMm.Select((s, i) => new Lane(i + 1, s, lying.WidthMm, (count / lanes) + (i < count % lanes ? 1 : 0)))],
            [.. choice.Open.Select(i => belt.Zones[i].Id)],
            [.. belt.Zones.Where((_, i) => !choice.Open.Contains(i)).Select(z => z.Id)],
            choice.UncoveredMm,
            frontLay);
    }

    /// <summary>Why a sheet finds no place.</summary>
    internal static InputFault NoPlace(string name, SizeMm sheet, bool mayTurn, Belt belt)
    {
        bool fits = sheet.FitsIn(new(belt.WidthMm, belt.MaxFeedMm)) || (mayTurn && sheet.Turned().FitsIn(new(belt.WidthMm, belt.MaxFeedMm)));
        return new(
            name,
            null,
            fits ? "hold-down" : "size",
            Invariant($"{sheet}{(mayTurn ? ", may turn" : "")}"),
            fits
                ? Invariant($"a lay at which zones hold {belt.HoldSharePercent:0} % of the width and all but {belt.UnheldStripMm:0} mm of each side")
                : Invariant($"at most {belt.WidthMm:0.##} mm across the belt and {belt.MaxFeedMm:0.##} mm along the feed"));
    }
}
