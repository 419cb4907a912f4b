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
        Bounds.Within(belt.HoldSharePercent, 0, 100, nameof(belt));
        Bounds.Within(belt.UnheldStripMm, 0, 100_000, nameof(belt));
        Bounds.Within(belt.PinInsetMm, 0, 10_000, nameof(belt));
        Bounds.Within(belt.PinSpreadPercent, 0, 100, nameof(belt));
        Bounds.Within(belt.MaxLanes, 0, 64, nameof(belt));
        Bounds.NotEmpty(belt.LaysMm, nameof(belt));
        IReadOnlyList<BeltZone> sorted = [.. belt.Zones.OrderBy(z => z.StartMm)];
        for (int i = 1; i < sorted.Count; i++)
            if (sorted[i].StartMm < sorted[i - 1].EndMm - 1e-6)
                throw new ArgumentException(Invariant($"Zones {sorted[i - 1].Id} and {sorted[i].Id} overlap."), nameof(belt));
    }

    /// <summary>The place of a choice of equal sheets.</summary>
    internal static BeltPlace Place(Belt belt, SizeMm lying, bool turned, LaneChoice choice, int count, string frontLay)
    {
        int lanes = choice.StartsMm.Count;
        return Place(
            belt, lying, turned, choice, frontLay,
            [.. choice.StartsMm.Select((s, i) => new Lane(i + 1, s, lying.WidthMm, Share(count, lanes, i), End(belt, s + lying.WidthMm), Loaded: Loaded(belt, i, lanes)))]);
    }

    /// <summary>The place of a choice of different blanks.</summary>
    internal static BeltPlace Place(Belt belt, IReadOnlyList<LaneBlank> blanks, LaneSet set, LaneChoice choice, int turned)
    {
        int lanes = choice.StartsMm.Count;
        int[] all = [.. blanks.Select((_, b) => choice.Types.Count(t => t == b))], seen = new int[blanks.Count];
        List<Lane> rows = [];
        for (int i = 0; i < lanes; i++)
        {
            int b = choice.Types[i];
            SizeMm lying = set.Lying(b, turned);
            rows.Add(new(
                i + 1, choice.StartsMm[i], lying.WidthMm, Share(blanks[b].Count, all[b], seen[b]++), End(belt, choice.StartsMm[i] + lying.WidthMm),
                blanks[b].Id, lying.HeightMm, (turned >> b & 1) == 1, Loaded(belt, i, lanes)));
        }

        SizeMm largest = new(rows.Max(r => r.WidthMm), rows.Max(r => r.FeedMm!.Value));
        return Place(belt, largest, rows.All(r => r.Turned == true), choice, "pins", rows);
    }

    private static BeltPlace Place(Belt belt, SizeMm largest, bool turned, LaneChoice choice, string frontLay, IReadOnlyList<Lane> lanes) => new(
        belt.WidthMm,
        largest.WidthMm,
        largest.HeightMm,
        turned,
        lanes,
        [.. choice.Open.Select(i => belt.Zones[i].Id)],
        [.. belt.Zones.Where((_, i) => !choice.Open.Contains(i)).Select(z => z.Id)],
        choice.UncoveredMm,
        frontLay,
        belt.Side);

    // Blanks are dealt out evenly; the first lanes take one more.
    private static int Share(int count, int lanes, int lane) => (count / lanes) + (lane < count % lanes ? 1 : 0);

    // Lanes lie on the grid of lays: from one lay to another, or to the side of the belt.
    private static double End(Belt belt, double sideMm) => belt.LaysMm.Where(l => l >= sideMm - 1e-6).DefaultIfEmpty(belt.WidthMm).Min();

    // From the origin's side one reaches over lanes still empty: the farthest first.
    private static int Loaded(Belt belt, int lane, int lanes) => belt.Side is LoadSide.Origin ? lanes - lane : lane + 1;

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

    /// <summary>Why different blanks do not lie side by side.</summary>
    internal static InputFault NoPlaceTogether(string name, IReadOnlyList<LaneBlank> blanks, bool anyOrder, Belt belt) => new(
        name,
        null,
        "lanes",
        Invariant($"{string.Join(", ", blanks.Select(b => Invariant($"{b.Id} {b.Size}")))}{(anyOrder ? "" : ", in this order")}"),
        Invariant($"blanks that lie and are held side by side within {belt.WidthMm:0.##} mm, at most {Math.Max(1, belt.MaxLanes)} lanes, {belt.LaneGapMm:0.##} mm apart"));
}
