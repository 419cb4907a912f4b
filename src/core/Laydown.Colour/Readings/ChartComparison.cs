using Laydown.Measures;

namespace Laydown.Colour.Readings;

/// <summary>Compares readings with the chart they should be of.</summary>
public static class ChartComparison
{
    /// <summary>Largest difference of an ink that is taken for rounding: a step of 8 bits and a half.</summary>
    public const double InkRounding = 0.006;

    private const string Practice = "common practice, no source";

    /// <summary>What does not fit: patches missing, read but not asked for, with other inks than asked for, one id with several inks.</summary>
    /// <param name="wanted">All patches of the chart; an id may come again.</param>
    /// <param name="set">The readings.</param>
    public static IReadOnlyList<Finding> Of(IReadOnlyList<WantedPatch> wanted, ReadingSet set)
    {
        Dictionary<string, WantedPatch> chart = new(StringComparer.Ordinal);
        List<Finding> findings = [];
        foreach (WantedPatch patch in wanted)
        {
            if (!chart.TryAdd(patch.Id, patch) && !Same(chart[patch.Id].Inks, patch.Inks))
                findings.Add(Fault("chart-id-twice", Invariant($"The chart asks for patch {patch.Id} twice, with different inks."), Inks(patch.Inks), Inks(chart[patch.Id].Inks)));
        }

        Dictionary<string, Patch> read = new(StringComparer.Ordinal);
        foreach (Patch patch in set.Patches)
            Judge(patch, chart, read, findings);
        findings.AddRange(chart.Values.Where(w => !read.ContainsKey(w.Id)).Select(w =>
            Fault("patch-missing", Invariant($"Patch {w.Id} of the chart was not read."), "no reading", Inks(w.Inks))));
        return findings;
    }

    private static void Judge(Patch patch, Dictionary<string, WantedPatch> chart, Dictionary<string, Patch> read, List<Finding> findings)
    {
        if (!read.TryAdd(patch.Id, patch))
        {
            if (!Same(read[patch.Id].Inks, patch.Inks))
                findings.Add(Fault("reading-id-twice", Invariant($"Patch {patch.Id} was read twice, with different inks."), Inks(patch.Inks), Inks(read[patch.Id].Inks)));
            return;
        }

        if (!chart.TryGetValue(patch.Id, out WantedPatch? asked))
            findings.Add(Fault("patch-unknown", Invariant($"Patch {patch.Id} was read but is not on the chart."), Inks(patch.Inks), "a patch of the chart"));
        else if (!Same(asked.Inks, patch.Inks))
            findings.Add(Fault("patch-inks", Invariant($"Patch {patch.Id} has other inks than the chart asks for."), Inks(patch.Inks), Inks(asked.Inks)));
    }

    private static bool Same(IReadOnlyList<double> one, IReadOnlyList<double> other) =>
        one.Count == other.Count && one.Zip(other).All(p => Math.Abs(p.First - p.Second) <= InkRounding);

    private static string Inks(IReadOnlyList<double> inks) => string.Join(" / ", inks.Select(i => Invariant($"{i * 100:0.#}"))) + " %";

    private static Finding Fault(string code, string what, string measured, string wanted) =>
        new(code, Severity.Stop, null, null, what, measured, wanted, null, Practice);
}
