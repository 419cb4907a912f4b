using Laydown.Colour.Readings;
using Laydown.Measures;

namespace Laydown.Colour.Fits;

/// <summary>What keeps readings from carrying a model.</summary>
internal static class FitFaults
{
    private const int MostInks = 8;

    /// <summary>Every fault; none when a fit can be tried.</summary>
    internal static IReadOnlyList<InputFault> Of(string file, ReadingSet readings)
    {
        int inks = readings.InkNames.Count;
        if (inks is < 1 or > MostInks)
            return [new(file, null, "inks", Invariant($"{inks}"), Invariant($"1 to {MostInks}"))];
        List<InputFault> faults = [];
        foreach (Patch patch in readings.Patches)
        {
            if (patch.Inks.Count != inks || patch.Inks.Any(i => !(i is >= 0 and <= 1)))
                faults.Add(new(file, null, Invariant($"patch {patch.Id}, inks"), string.Join(" ", patch.Inks), Invariant($"{inks} parts from 0 to 1")));
            if (!(double.IsFinite(patch.Lab.L) && double.IsFinite(patch.Lab.A) && double.IsFinite(patch.Lab.B)))
                faults.Add(new(file, null, Invariant($"patch {patch.Id}, Lab"), patch.Lab.ToString(), "numbers"));
        }

        if (faults.Count > 0)
            return faults;

        // Paper and the solid of each ink anchor everything else.
        if (!readings.Patches.Any(p => p.Inks.All(i => i == 0)))
            faults.Add(new(file, null, "paper", "no patch without ink", "at least one"));
        for (int ink = 0; ink < inks; ink++)
        {
            int at = ink;
            if (!readings.Patches.Any(p => p.Inks[at] > 0.99 && p.Inks.Index().All(i => i.Index == at || i.Item == 0)))
                faults.Add(new(file, null, Invariant($"solid of {readings.InkNames[ink]}"), "no patch with this ink alone at 100 %", "at least one"));
        }

        int least = 1 + (4 * inks);
        int distinct = readings.Patches.Select(p => string.Join('/', p.Inks)).Distinct(StringComparer.Ordinal).Count();
        if (distinct < least)
            faults.Add(new(file, null, "patches", Invariant($"{distinct} mixtures"), Invariant($"at least {least} for {inks} inks")));
        return faults;
    }
}
