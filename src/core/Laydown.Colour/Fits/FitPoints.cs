using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;

namespace Laydown.Colour.Fits;

/// <summary>What a fit rests on: distinct mixtures and the mean of what was read of each.</summary>
/// <param name="Inks">Mixtures, parts of one full ink.</param>
/// <param name="Colours">Their colours under D50 against the perfect diffuser.</param>
/// <param name="Ids">Patch each was first seen under.</param>
internal sealed record FitPoints(IReadOnlyList<double[]> Inks, IReadOnlyList<Lab> Colours, IReadOnlyList<string> Ids)
{
    internal int Count => Inks.Count;

    /// <summary>Readings of the same mixture, whatever their patch, become one: their mean in Lab, where noise is even.</summary>
    internal static FitPoints Of(ReadingSet readings)
    {
        Dictionary<string, int> known = new(StringComparer.Ordinal);
        List<double[]> inks = [];
        List<(double L, double A, double B, int Count)> sums = [];
        List<string> ids = [];
        foreach (Patch patch in readings.Patches)
        {
            string key = string.Join('/', patch.Inks.Select(i => ((int)Math.Round(i * 10000)).ToString(
                System.Globalization.CultureInfo.InvariantCulture)));
            if (!known.TryGetValue(key, out int at))
            {
                known.Add(key, at = inks.Count);
                inks.Add([.. patch.Inks]);
                sums.Add(default);
                ids.Add(patch.Id);
            }

            (double l, double a, double b, int count) = sums[at];
            sums[at] = (l + patch.Lab.L, a + patch.Lab.A, b + patch.Lab.B, count + 1);
        }

        return new(inks, [.. sums.Select(s => new Lab(s.L / s.Count, s.A / s.Count, s.B / s.Count))], ids);
    }

    /// <summary>Some of the points.</summary>
    internal FitPoints Only(IReadOnlyList<int> which) => new(
        [.. which.Select(i => Inks[i])], [.. which.Select(i => Colours[i])], [.. which.Select(i => Ids[i])]);

    /// <summary>Roots of all colours, three for each point.</summary>
    internal double[] Roots(RootSpace space)
    {
        double[] roots = new double[3 * Count];
        for (int point = 0; point < Count; point++)
            space.Roots(Colours[point].ToXyz(WhitePoints.Pcs), roots.AsSpan(3 * point, 3));
        return roots;
    }
}
