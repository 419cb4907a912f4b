using Laydown.Layout.Lanes;

namespace Laydown.Layout.Jobs;

/// <summary>What a job of blanks on a belt must be.</summary>
internal static class BeltDemands
{
    /// <summary>All that is wrong with the belt and what is to lie on it.</summary>
    internal static IEnumerable<JobFault> Faults(LayoutJob job)
    {
        JobBelt belt = job.Belt!;
        if (job.Stocks.Count > 0)
            yield return new("/stocks", Invariant($"{job.Stocks.Count} beside a belt"), "no stocks: the pieces of a belt are the blanks themselves");
        if (job.Pieces.Count > LanePlan.MostBlanks)
            yield return new("/pieces", Invariant($"{job.Pieces.Count} different blanks"), Invariant($"at most {LanePlan.MostBlanks} side by side"));
        for (int i = 0; i < job.Pieces.Count; i++)
            if (job.Pieces[i].Contour is not null)
                yield return new(Invariant($"/pieces/{i}/contour"), "a contour on a belt", "widthMm and heightMm of the blank");
        foreach (JobFault fault in Places("/belt/laysMm", belt.LaysMm, belt.WidthMm).Concat(Places("/belt/pinsMm", belt.PinsMm ?? [], belt.WidthMm)).Concat(Zones(belt)))
            yield return fault;
        if (belt.LaysMm.Count == 0)
            yield return new("/belt/laysMm", "no lay", "at least one place where a blank's side can be laid");
    }

    private static IEnumerable<JobFault> Places(string field, IReadOnlyList<double> places, double widthMm)
    {
        for (int i = 0; i < places.Count; i++)
            if (!(places[i] >= 0 && places[i] <= widthMm) || (i > 0 && places[i] <= places[i - 1]))
                yield return new(Invariant($"{field}/{i}"), Invariant($"{places[i]:0.###} mm"), Invariant($"ascending places from 0 to {widthMm:0.###} mm"));
    }

    private static IEnumerable<JobFault> Zones(JobBelt belt)
    {
        IReadOnlyList<BeltZone> zones = belt.Zones ?? [];
        if (zones.Count > 16)
            yield return new("/belt/zones", Invariant($"{zones.Count} zones"), "at most 16");
        if (zones.Select(z => z.Id).Distinct(StringComparer.Ordinal).Count() < zones.Count)
            yield return new("/belt/zones", "an id twice", "each id once");
        BeltZone[] sorted = [.. zones.OrderBy(z => z.StartMm)];
        for (int i = 0; i < sorted.Length; i++)
            if (sorted[i].StartMm < 0 || sorted[i].EndMm > belt.WidthMm + 1e-6 || (i > 0 && sorted[i].StartMm < sorted[i - 1].EndMm - 1e-6))
                yield return new(Invariant($"/belt/zones, {sorted[i].Id}"), Invariant($"{sorted[i].StartMm:0.###} to {sorted[i].EndMm:0.###} mm"), Invariant($"zones side by side within 0 to {belt.WidthMm:0.###} mm"));
    }
}
