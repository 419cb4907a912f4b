using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>Finds the largest sum of inks worth printing, from ladders of overprints.</summary>
/// <remarks>
/// A ladder is a row of patches with the same inks in the same ratio and a rising sum. It ends at the sum beyond which one more full ink
/// would change the colour by less than 3 ΔE00. The largest end of all ladders counts: colours up to it still gain. Bleed and cure
/// defects are seen, not measured: the operator marks the largest clean patch, and the smaller wins. Common practice, no source.
/// </remarks>
public static class TotalLimitFinder
{
    /// <summary>Change for one more full ink that still counts, ΔE00.</summary>
    public const double LeastChange = 3;

    /// <summary>Least total limit that leaves a press its gamut, percent: one full ink.</summary>
    public const double LeastPercent = 100;

    /// <summary>The total limit of a chart.</summary>
    /// <param name="set">Readings with overprint ladders.</param>
    /// <param name="largestCleanPatch">Id of the largest patch without defects; null where the operator marked none.</param>
    /// <param name="file">Name of the file for messages.</param>
    public static Reading<FoundLimit> Find(ReadingSet set, string? largestCleanPatch, string file)
    {
        foreach (Patch patch in set.Patches)
        {
            if (patch.Inks.Any(i => !(i is >= 0 and <= 1)) || !double.IsFinite(patch.Lab.L + patch.Lab.A + patch.Lab.B))
                return Refused(file, Invariant($"patch {patch.Id}"), "a value that is no number or lies outside its range",
                    "inks of 0 % to 100 % and a measured colour");
        }

        Patch[][] ladders = [.. Ladders(set)];
        if (ladders.Length == 0)
            return Refused(file, "overprints", "no ladder of overprints",
                "three patches or more of the same two or more inks with a rising sum");
        List<(LimitReason Reason, Figure Limit)> found = [ladders.Select(l => End(l, set.InkNames)).MaxBy(e => e.Limit.Value)];
        if (largestCleanPatch is not null)
        {
            if (set.Patches.FirstOrDefault(p => p.Id == largestCleanPatch) is not { } clean)
                return Refused(file, "largest clean patch", Invariant($"\"{largestCleanPatch}\""), "the id of a patch of the chart");
            found.Add((LimitReason.LargestCleanPatch, Percent(Sum(clean),
                Invariant($"patch {clean.Id} is the largest without bleed or cure defect"))));
        }

        (LimitReason Reason, Figure Limit) least = found.MinBy(f => f.Limit.Value);
        if (least.Limit.Value < LeastPercent)
            return Refused(file, "total limit", Invariant($"{least.Limit.Value:0.#} %: {least.Limit.Because}"),
                Invariant($"at least {LeastPercent} %"));
        return Reading.Of(new FoundLimit(least.Reason, least.Limit, [.. found.Where(f => f != least).Select(f => f.Limit)]));
    }

    // Patches of two inks or more whose inks stand in the same ratio to the hundredth, each sum once, at least three sums.
    private static IEnumerable<Patch[]> Ladders(ReadingSet set) => set.Patches
        .Where(p => p.Inks.Count(i => i > 1e-4) >= 2)
        .GroupBy(p => string.Join(' ', p.Inks.Select(i => Invariant($"{Math.Round(i / p.Inks.Max(), 2):0.00}"))))
        .Select(g => g.GroupBy(p => Math.Round(Sum(p), 1)).Select(s => s.First()).OrderBy(Sum).ToArray())
        .Where(l => l.Length >= 3);

    private static (LimitReason Reason, Figure Limit) End(Patch[] ladder, IReadOnlyList<string> names)
    {
        int end = 0;
        double change = 0;
        while (end < ladder.Length - 1)
        {
            change = Ciede2000.Between(ladder[end].Lab, ladder[end + 1].Lab) / (Sum(ladder[end + 1]) - Sum(ladder[end])) * 100;
            if (change < LeastChange)
                break;
            end++;
        }

        string inks = string.Join(" + ", names.Where((_, i) => ladder[0].Inks[i] > 1e-4));
        return (LimitReason.OverprintStopsChanging, Percent(Sum(ladder[end]), end == ladder.Length - 1
            ? Invariant($"{inks} still changes by {change:0.0} ΔE00 for one more full ink at its largest patch, {ladder[end].Id}")
            : Invariant($"{inks} changes by {change:0.0} ΔE00 for one more full ink beyond patch {ladder[end].Id}; {LeastChange} asked")));
    }

    private static double Sum(Patch patch) => patch.Inks.Sum() * 100;

    private static Figure Percent(double percent, string because) => new("total limit", percent, "%", because,
        "common practice, no source");

    private static Reading<FoundLimit> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<FoundLimit>(new InputFault(file, null, field, found, wanted));
}
