using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>Judges blanks in lanes from the belt alone: sizes, lays, gaps, pins, zones that hold, open vacuum, order of loading, pieces an hour.</summary>
internal static class JobLaneChecks
{
    private const double SlackMm = JobChecks.SlackMm;

    /// <summary>All that is wrong.</summary>
    internal static IEnumerable<JobFault> Faults(JobLayout layout)
    {
        if (layout.Sheets.Count > 0)
            yield return new("sheets", Invariant($"{layout.Sheets.Count}"), "none where blanks lie on a belt");
        if (layout.Lanes is not { } lanes)
            yield break;
        JobBelt belt = layout.Job.Belt!;
        foreach (JobFault fault in Zones(belt, lanes.Place).Concat(Sum(belt, lanes)).Concat(Across(belt, lanes.Place)))
            yield return fault;
        foreach (Lane lane in lanes.Place.Lanes)
            foreach (JobFault fault in Lane(layout.Job, lane, lanes.Place))
                yield return fault with { Field = Invariant($"lane {lane.Number}, {fault.Field}") };
    }

    private static IEnumerable<JobFault> Lane(LayoutJob job, Lane lane, BeltPlace place)
    {
        JobBelt belt = job.Belt!;
        JobPiece? piece = job.Pieces.FirstOrDefault(p => p.Id == lane.BlankId);
        (double? w, double? h) = lane.Turned == true ? (piece?.HeightMm, piece?.WidthMm) : (piece?.WidthMm, piece?.HeightMm);
        if (piece is null || lane.WidthMm != w || lane.FeedMm != h || (lane.Turned == true && !piece.MayTurn) || lane.Blanks < 1)
            yield return new("blank", Invariant($"{lane.Blanks} × {lane.BlankId}, {lane.WidthMm:0.###} × {lane.FeedMm:0.###} mm"), piece is null ? "a piece of the job" : Invariant($"at least one {piece.Id}, {w:0.###} × {h:0.###} mm{(piece.MayTurn ? "" : ", not turned")}"));
        if (lane.FeedMm > belt.MaxFeedMm + SlackMm || lane.StartMm + lane.WidthMm > belt.WidthMm + SlackMm)
            yield return new("size", Invariant($"to {lane.StartMm + lane.WidthMm:0.###} mm across, {lane.FeedMm:0.###} mm long"), Invariant($"within {belt.WidthMm:0.###} mm, at most {belt.MaxFeedMm:0.###} mm long"));
        if (!belt.LaysMm.Any(l => Math.Abs(l - lane.StartMm) <= SlackMm))
            yield return new("startMm", Invariant($"{lane.StartMm:0.###} mm"), Invariant($"one of the lays {string.Join(", ", belt.LaysMm)} mm"));
        if (belt.PinsMm is { } pins && !Stops(belt, pins, lane))
            yield return new("pins", "no two pins that stop it square", Invariant($"two, {belt.PinInsetMm:0.###} mm from its sides and {belt.PinSpreadPercent:0.#} % of its width apart"));
        foreach (JobFault fault in Held(belt, lane, place))
            yield return fault;
    }

    private static bool Stops(JobBelt belt, IReadOnlyList<double> pins, Lane lane)
    {
        double[] before = [.. pins.Where(p => p >= lane.StartMm + belt.PinInsetMm - SlackMm && p <= lane.StartMm + lane.WidthMm - belt.PinInsetMm + SlackMm)];
        return before.Length > 1 && before.Max() - before.Min() >= (lane.WidthMm * belt.PinSpreadPercent / 100) - SlackMm;
    }

    private static IEnumerable<JobFault> Held(JobBelt belt, Lane lane, BeltPlace place)
    {
        if (belt.Zones is not { Count: > 0 } zones)
            yield break;
        (double From, double To)[] held = [.. zones.Where(z => place.OpenZones.Contains(z.Id, StringComparer.Ordinal))
            .Select(z => (From: Math.Max(z.StartMm, lane.StartMm), To: Math.Min(z.StartMm + z.WidthMm, lane.StartMm + lane.WidthMm))).Where(s => s.To > s.From).OrderBy(s => s.From)];
        double share = held.Sum(s => s.To - s.From);
        if (share < (lane.WidthMm * belt.HoldSharePercent / 100) - SlackMm)
            yield return new("hold-down", Invariant($"{100 * share / lane.WidthMm:0.#} % of its width over open zones"), Invariant($"at least {belt.HoldSharePercent:0.#} %"));
        double left = held.Length == 0 ? lane.WidthMm : held[0].From - lane.StartMm, right = held.Length == 0 ? lane.WidthMm : lane.StartMm + lane.WidthMm - held.Max(s => s.To);
        if (Math.Max(left, right) > belt.UnheldStripMm + SlackMm)
            yield return new("hold-down", Invariant($"a side strip of {Math.Max(left, right):0.###} mm over no open zone"), Invariant($"at most {belt.UnheldStripMm:0.###} mm"));
    }

    private static IEnumerable<JobFault> Across(JobBelt belt, BeltPlace place)
    {
        Lane[] lanes = [.. place.Lanes];
        if (lanes.Length == 0 || lanes.Length > Math.Max(1, belt.MaxLanes))
            yield return new("lanes", Invariant($"{lanes.Length}"), Invariant($"1 to {Math.Max(1, belt.MaxLanes)}"));
        for (int i = 0; i < lanes.Length; i++)
        {
            if (lanes[i].Number != i + 1)
                yield return new(Invariant($"lane {i + 1}"), Invariant($"number {lanes[i].Number}"), "numbers from the belt's origin");
            if (i > 0 && lanes[i].StartMm < lanes[i - 1].StartMm + lanes[i - 1].WidthMm + belt.LaneGapMm - SlackMm)
                yield return new(Invariant($"lane {i + 1}"), Invariant($"starts {lanes[i].StartMm - lanes[i - 1].StartMm - lanes[i - 1].WidthMm:0.###} mm from the lane before"), Invariant($"at least {belt.LaneGapMm:0.###} mm"));

            // From the origin's side one reaches over lanes still empty: the farthest first; else the nearest the origin.
            int wanted = belt.Side == LoadSide.Origin ? lanes.Length - i : i + 1;
            if (lanes[i].Loaded != wanted)
                yield return new(Invariant($"lane {i + 1}"), Invariant($"loaded as number {lanes[i].Loaded}"), Invariant($"number {wanted}, with the one who loads at the {belt.Side} side"));
        }
    }

    private static IEnumerable<JobFault> Zones(JobBelt belt, BeltPlace place)
    {
        IReadOnlyList<BeltZone> zones = belt.Zones ?? [];
        if (!place.OpenZones.Concat(place.ShutZones).Order(StringComparer.Ordinal).SequenceEqual(zones.Select(z => z.Id).Order(StringComparer.Ordinal)))
            yield return new("zones", Invariant($"open {string.Join(", ", place.OpenZones)}; shut {string.Join(", ", place.ShutZones)}"), "each zone of the belt once");
        double bare = zones.Where(z => place.OpenZones.Contains(z.Id, StringComparer.Ordinal)).Sum(z => z.WidthMm - place.Lanes.Sum(l => z.Under(l.StartMm, l.WidthMm)));
        if (Math.Abs(bare - place.UncoveredMm) > 0.01)
            yield return new("uncoveredMm", Invariant($"{place.UncoveredMm:0.###} mm"), Invariant($"{bare:0.###} mm of open zone under no blank"));
        if (Math.Abs(place.BeltWidthMm - belt.WidthMm) > SlackMm)
            yield return new("beltWidthMm", Invariant($"{place.BeltWidthMm:0.###} mm"), Invariant($"{belt.WidthMm:0.###} mm"));
    }

    private static IEnumerable<JobFault> Sum(JobBelt belt, JobLanes lanes)
    {
        double feed = lanes.Place.Lanes.Select(l => l.Blanks * (l.FeedMm ?? 0)).DefaultIfEmpty(0).Max();
        if (Math.Abs(feed - lanes.FeedMm) > SlackMm)
            yield return new("feedMm", Invariant($"{lanes.FeedMm:0.###} mm"), Invariant($"{feed:0.###} mm, the longest lane"));
        long blanks = lanes.Place.Lanes.Sum(l => (long)l.Blanks);
        double? hours = JobLanes.Hours(belt, feed, blanks);
        double? wanted = hours is > 0 ? blanks / hours : null;
        if ((wanted is null) != (lanes.PiecesPerHour is null) || Math.Abs((wanted ?? 0) - (lanes.PiecesPerHour ?? 0)) > 1e-6 * (wanted ?? 1))
            yield return new("piecesPerHour", Invariant($"{lanes.PiecesPerHour:0.##}"), Invariant($"{wanted:0.##}"));
    }
}
