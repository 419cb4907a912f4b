using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Readings;

/// <summary>Finds readings that do not fit what a model says of their inks: pairs that were swapped, and single ones.</summary>
/// <remarks>
/// A patch is suspect when its ΔE00 to the prediction is over 5 and over 6 times the median of all. Two suspects were swapped when each
/// fits the other's prediction better than its own and the sum of their differences falls to less than half (common practice, no source).
/// </remarks>
public static class PatchMisfits
{
    private const int Most = 500;

    /// <summary>What does not fit, worst first; swapped pairs before single patches.</summary>
    /// <param name="set">The readings.</param>
    /// <param name="predicted">For each patch its predicted colour, best from a model that was made without it.</param>
    /// <exception cref="ArgumentException">There is not one prediction for each patch.</exception>
    public static IReadOnlyList<Finding> Find(ReadingSet set, IReadOnlyList<Lab> predicted)
    {
        if (predicted.Count != set.Patches.Count)
            throw new ArgumentException(Invariant($"{predicted.Count} predictions: wanted {set.Patches.Count}, one for each patch."), nameof(predicted));
        if (predicted.Count == 0)
            return [];

        double[] apart = [.. set.Patches.Select((p, i) => Ciede2000.Between(p.Lab, predicted[i]))];
        double limit = Math.Max(5, 6 * apart.Order().ElementAt(apart.Length / 2));
        int[] suspects = [.. Enumerable.Range(0, apart.Length).Where(i => apart[i] > limit).OrderByDescending(i => apart[i]).Take(Most)];

        // The pair that gains most is taken first; a patch is in one pair at most.
        HashSet<int> told = [];
        List<Finding> findings = [];
        foreach ((int one, int other, double cross) in Pairs(set, predicted, apart, suspects))
        {
            if (told.Contains(one) || told.Contains(other))
                continue;
            told.UnionWith([one, other]);
            findings.Add(Swapped(set.Patches[one].Id, set.Patches[other].Id, (apart[one] + apart[other]) / 2, cross / 2));
        }

        findings.AddRange(suspects.Where(i => !told.Contains(i)).Select(i => Alone(set.Patches[i].Id, apart[i], limit)));
        return findings;
    }

    private static List<(int One, int Other, double Cross)> Pairs(ReadingSet set, IReadOnlyList<Lab> predicted, double[] apart, int[] suspects)
    {
        List<(int One, int Other, double Cross)> pairs = [];
        for (int a = 0; a < suspects.Length; a++)
        {
            for (int b = a + 1; b < suspects.Length; b++)
            {
                (int i, int j) = (suspects[a], suspects[b]);
                double ij = Ciede2000.Between(set.Patches[i].Lab, predicted[j]), ji = Ciede2000.Between(set.Patches[j].Lab, predicted[i]);
                if (ij < apart[i] && ji < apart[j] && ij + ji < (apart[i] + apart[j]) / 2)
                    pairs.Add((i, j, ij + ji));
            }
        }

        return [.. pairs.OrderByDescending(p => apart[p.One] + apart[p.Other] - p.Cross).ThenBy(p => p.One).ThenBy(p => p.Other)];
    }

    private static Finding Swapped(string one, string other, double apart, double crossed) => new(
        "patches-swapped", Severity.Stop, null, null,
        Invariant($"Patches {one} and {other} look swapped: each fits the inks of the other."),
        Invariant($"{apart:0.0} ΔE00 from the prediction, {crossed:0.0} when changed over"), "each patch at its own place", null, "common practice, no source");

    private static Finding Alone(string id, double apart, double limit) => new(
        "patch-misfit", Severity.Warn, null, null,
        Invariant($"Patch {id} does not fit what the other patches say of its inks."),
        Invariant($"{apart:0.0} ΔE00 from the prediction"), Invariant($"at most {limit:0.0} ΔE00"), null, "common practice, no source");
}
