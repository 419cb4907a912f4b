using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>Picks the single-ink step wedges out of the readings of a chart.</summary>
/// <remarks>
/// Repeats of a step are meaned; with three or more, a reading that lies further from the median colour than three times the median of
/// these distances, and further than 0.5 ΔE76, is left out and named. The factor and the floor are common practice, no source.
/// </remarks>
public static class Wedges
{
    /// <summary>Least number of steps with the bare stock and the full ink.</summary>
    public const int LeastSteps = 5;

    /// <summary>Widest gap between two steps, parts of one full ink.</summary>
    public const double WidestGap = 0.3;

    private const double SameInk = 1e-4;

    /// <summary>The wedge of every ink of the set, in the set's order.</summary>
    /// <param name="set">Readings.</param>
    /// <param name="file">Name of the file for messages.</param>
    /// <returns>The wedges, or a fault for each ink or reading that is missing, swapped, or no number.</returns>
    public static Reading<IReadOnlyList<Wedge>> From(ReadingSet set, string file)
    {
        List<InputFault> faults = [];
        List<Wedge> wedges = [];
        for (int ink = 0; ink < set.InkNames.Count; ink++)
        {
            Reading<Wedge> one = From(set, ink, file);
            if (one.IsTaken)
                wedges.Add(one.Value);
            else
                faults.AddRange(one.Faults.Where(f => !faults.Contains(f)));
        }

        if (set.InkNames.Count == 0)
            faults.Add(new(file, null, "inks", "no ink", "at least one ink"));
        return faults.Count > 0 ? Reading.Refused<IReadOnlyList<Wedge>>(faults) : Reading.Of<IReadOnlyList<Wedge>>(wedges);
    }

    /// <summary>The wedge of one ink.</summary>
    /// <param name="set">Readings.</param>
    /// <param name="ink">Place of the ink in the set's names.</param>
    /// <param name="file">Name of the file for messages.</param>
    /// <exception cref="ArgumentOutOfRangeException">The set has no such ink.</exception>
    public static Reading<Wedge> From(ReadingSet set, int ink, string file)
    {
        Bounds.Within(ink, 0, set.InkNames.Count - 1);
        string name = set.InkNames[ink];
        InputFault[] bad = [.. set.Patches.Where(p => !IsSound(p, set.InkNames.Count)).Select(p => new InputFault(
            file, null, Invariant($"patch {p.Id}"), "a value that is no number or lies outside its range",
                "inks of 0 % to 100 % and a measured colour"))];
        if (bad.Length > 0)
            return Reading.Refused<Wedge>(bad);

        List<string> rejected = [];
        WedgeStep[] steps = [.. set.Patches.Where(p => IsAlone(p, ink)).GroupBy(p => Math.Round(p.Inks[ink] / SameInk))
            .OrderBy(g => g.Key).Select(g => Mean(name, g.Key * SameInk, [.. g], rejected))];
        return Fault(file, name, steps) is { } fault ? Reading.Refused<Wedge>(fault) : Reading.Of(new Wedge(name, steps, rejected));
    }

    private static bool IsSound(Patch patch, int inks) => patch.Inks.Count == inks && patch.Inks.All(i => i is >= 0 and <= 1)
        && double.IsFinite(patch.Lab.L) && double.IsFinite(patch.Lab.A) && double.IsFinite(patch.Lab.B);

    private static bool IsAlone(Patch patch, int ink)
    {
        for (int other = 0; other < patch.Inks.Count; other++)
        {
            if (other != ink && patch.Inks[other] > SameInk)
                return false;
        }

        return true;
    }

    private static WedgeStep Mean(string name, double ink, Patch[] reads, List<string> rejected)
    {
        Lab middle = new(Median(reads.Select(r => r.Lab.L)), Median(reads.Select(r => r.Lab.A)), Median(reads.Select(r => r.Lab.B)));
        double[] off = [.. reads.Select(r => Distance(r.Lab, middle))];
        double most = reads.Length < 3 ? double.PositiveInfinity : Math.Max(0.5, 3 * Median(off));
        for (int i = 0; i < reads.Length; i++)
        {
            if (off[i] > most)
                rejected.Add(Invariant($"{name} {ink * 100:0.##} %: reading {i + 1} of patch {reads[i].Id} lies {off[i]:0.0} ΔE76 from the median, more than {most:0.0}; left out."));
        }

        Lab[] kept = [.. reads.Where((_, i) => off[i] <= most).Select(r => r.Lab)];
        return new(ink, new(kept.Average(k => k.L), kept.Average(k => k.A), kept.Average(k => k.B)), kept.Length);
    }

    private static InputFault? Fault(string file, string name, WedgeStep[] steps)
    {
        string field = "wedge of " + name;
        if (steps.Length == 0 || steps[0].Ink > SameInk)
            return new(file, null, field, "no patch of the bare stock", "one patch without ink");
        if (steps[^1].Ink < 1 - SameInk)
            return new(file, null, field, Invariant($"steps up to {steps[^1].Ink * 100:0.##} %"), "a patch of the full ink");
        if (steps.Length < LeastSteps)
            return new(file, null, field, Invariant($"{steps.Length} steps"),
                Invariant($"at least {LeastSteps} with the bare stock and the full ink"));
        for (int i = 1; i < steps.Length; i++)
        {
            if (steps[i].Ink - steps[i - 1].Ink > WidestGap + SameInk)
                return new(file, null, field, Invariant($"nothing between {steps[i - 1].Ink * 100:0.##} % and {steps[i].Ink * 100:0.##} %"),
                    Invariant($"steps no more than {WidestGap * 100:0} % apart"));
        }

        return Swapped(file, field, steps);
    }

    // A tone that falls and later comes back was misread or swapped; one that falls for good is the turn of the ink, which the limit finds.
    private static InputFault? Swapped(string file, string field, WedgeStep[] steps)
    {
        double[] tone = ToneValues.Of(steps, LinearisationAim.ToneValue);
        if (tone.Max() < 1e-9 || !(ToneValues.Distance(steps[0].Lab, steps[^1].Lab) > 2))
            return new(file, null, field, "a full ink that looks like the bare stock", "an ink that can be seen");
        double top = 0;
        for (int i = 1; i < steps.Length; i++)
        {
            double later = tone.Skip(i + 1).DefaultIfEmpty(double.NegativeInfinity).Max();
            if (tone[i] < top - ToneValues.NoisePercent && later > top - ToneValues.NoisePercent)
            {
                return new(file, null, field,
                    Invariant($"tone value {tone[i]:0.0} % at step {steps[i].Ink * 100:0.##} % after {top:0.0} % before it"),
                    Invariant($"tones that rise from step to step, to {ToneValues.NoisePercent} %: a patch was swapped or misread"));
            }

            top = Math.Max(top, tone[i]);
        }

        return null;
    }

    private static double Distance(Lab one, Lab other) =>
        Math.Sqrt(((one.L - other.L) * (one.L - other.L)) + ((one.A - other.A) * (one.A - other.A))
            + ((one.B - other.B) * (one.B - other.B)));

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
