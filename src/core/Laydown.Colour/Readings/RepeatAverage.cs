using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Readings;

/// <summary>The mean of all readings of a patch over the same backing, outliers left out and named.</summary>
/// <remarks>
/// With at least three readings, one is an outlier when its ΔE00 to the middle (median of L*, a*, b*) is over
/// <see cref="LeastOutlier"/> and over the median of these distances by more than 3.5 × 1.4826 × their median deviation
/// (common practice, no source). With two readings nothing can be told, and both are taken.
/// </remarks>
public static class RepeatAverage
{
    /// <summary>No reading within this ΔE00 of the middle is called an outlier: instruments differ as much (from memory).</summary>
    public const double LeastOutlier = 1.0;

    /// <summary>Each patch once. Spectra are averaged where all readings of the patch have the same bands, else Lab.</summary>
    public static AveragedReadings Of(ReadingSet set)
    {
        List<Patch> means = [];
        List<RepeatSpread> spreads = [];
        List<Finding> findings = [];
        foreach (IGrouping<(string Id, Behind Behind), Patch> repeats in set.Patches.GroupBy(p => (p.Id, p.Behind)))
        {
            Patch[] readings = [.. repeats];
            int[] outliers = Outliers(readings);
            Patch mean = Mean([.. readings.Where((_, i) => !outliers.Contains(i))]);
            double[] fromMean = [.. readings.Select(r => Ciede2000.Between(r.Lab, mean.Lab))];
            means.Add(mean);
            spreads.Add(new(mean.Id, fromMean, outliers));
            findings.AddRange(outliers.Select(i => Outlier(mean.Id, i, readings.Length, fromMean[i])));
        }

        return new(set with { Patches = means }, spreads, findings);
    }

    private static int[] Outliers(Patch[] readings)
    {
        if (readings.Length < 3)
            return [];
        Lab middle = new(
            Median([.. readings.Select(r => r.Lab.L)]), Median([.. readings.Select(r => r.Lab.A)]), Median([.. readings.Select(r => r.Lab.B)]));
        double[] apart = [.. readings.Select(r => Ciede2000.Between(r.Lab, middle))];
        double usual = Median(apart);
        double limit = Math.Max(LeastOutlier, usual + (3.5 * 1.4826 * Median([.. apart.Select(d => Math.Abs(d - usual))])));
        return [.. Enumerable.Range(0, readings.Length).Where(i => apart[i] > limit)];
    }

    private static Patch Mean(Patch[] readings)
    {
        if (readings.Length == 1)
            return readings[0];
        Patch first = readings[0];
        if (!readings.All(r => r.Spectrum is { } s && first.Spectrum is { } f
            && s.FirstNm == f.FirstNm && s.StepNm == f.StepNm && s.Values.Count == f.Values.Count))
            return first with { Spectrum = null, Lab = new(readings.Average(r => r.Lab.L), readings.Average(r => r.Lab.A), readings.Average(r => r.Lab.B)) };

        double[] values = [.. first.Spectrum!.Values.Select((_, band) => readings.Average(r => r.Spectrum!.Values[band]))];
        Spectrum mean = first.Spectrum with { Values = values };
        return first with { Spectrum = mean, Lab = ReadingColour.LabOf(mean) };
    }

    private static Finding Outlier(string id, int reading, int readings, double apart) => new(
        "reading-outlier", Severity.Warn, null, null,
        Invariant($"Patch {id}: reading {reading + 1} of {readings} lies apart from the others and was left out of the mean."),
        Invariant($"{apart:0.00} ΔE00 from the mean"), Invariant($"near the other readings, at most about {LeastOutlier:0.0} ΔE00"), null, "common practice, no source");

    private static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        int half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
