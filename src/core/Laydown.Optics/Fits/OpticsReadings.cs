using Laydown.Colour.Charts;
using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Measures;

namespace Laydown.Optics.Fits;

/// <summary>Makes the table of a fit from readings of a chart of ink optics, one set for each backing or all in one.</summary>
/// <remarks>
/// A patch named <c>BACKING</c>, with anything behind its name, is a reading of the backing alone. Inks named <c>… under white</c> lie
/// between sheet and white. Spectra of other bands are read off straight lines; beyond their ends the last value is taken and told.
/// </remarks>
public static class OpticsReadings
{
    private const string BackingName = "BACKING";
    private const double MostBacking = 0.99;

    /// <summary>The table, or every reason against it.</summary>
    /// <param name="sets">Sets of readings; a patch keeps its name over every backing.</param>
    public static Reading<OpticsTable> From(IReadOnlyList<ReadingSet> sets)
    {
        List<InputFault> faults = [];
        List<OpticsReading> readings = [];
        List<string> notes = [];
        List<(Behind Behind, double[] Values)> backings = [];
        foreach (ReadingSet set in sets)
        {
            AveragedReadings averaged = RepeatAverage.Of(set);
            notes.AddRange(averaged.Findings.Select(f => Invariant($"{set.Name}: {f.What}")));
            Beyond(set, notes);
            foreach (Patch patch in averaged.Set.Patches)
            {
                if (FaultOf(set, patch) is { } fault)
                    faults.Add(fault);
                else if (patch.Id.StartsWith(BackingName, StringComparison.OrdinalIgnoreCase))
                    backings.Add((patch.Behind, InBands(patch.Spectrum!)));
                else
                    readings.Add(new(patch.Id, patch.Behind, BuildOf(set.InkNames, patch.Inks), InBands(patch.Spectrum!)));
            }
        }

        faults.AddRange(readings.GroupBy(r => r.Id).Where(g => g.Select(r => r.Build.Words()).Distinct().Count() > 1).Select(g => new InputFault(
            "readings", null, g.Key, string.Join(" and ", g.Select(r => r.Build.Words()).Distinct()), "the same inks over every backing")));
        if (readings.Count == 0 && faults.Count == 0)
            faults.Add(new("readings", null, "patches", "none", "readings of a chart of ink optics"));
        return faults.Count > 0
            ? Reading.Refused<OpticsTable>([.. faults.Take(50)])
            : Reading.Of(new OpticsTable(readings, BackingsOf(backings, readings, notes), notes));
    }

    private static InputFault? FaultOf(ReadingSet set, Patch patch)
    {
        if (patch.Behind == Behind.Unsaid)
            return new(set.Name, null, Invariant($"patch {patch.Id}, SAMPLE_BACKING"), "nothing",
                "black, white or lamp: what stood behind while it was read");
        if (patch.Spectrum is null)
            return new(set.Name, null, Invariant($"patch {patch.Id}"), "Lab or XYZ alone", "a spectrum, 400 nm to 700 nm or more");
        return null;
    }

    private static OpticsBuild BuildOf(IReadOnlyList<string> names, IReadOnlyList<double> inks)
    {
        List<InkShare> under = [], over = [];
        double white = 0;
        for (int i = 0; i < names.Count; i++)
        {
            if (inks[i] <= 0)
                continue;
            if (string.Equals(names[i], OpticsBuild.WhiteName, StringComparison.OrdinalIgnoreCase))
                white = inks[i];
            else if (names[i].EndsWith(OpticsChart.Under, StringComparison.OrdinalIgnoreCase))
                under.Add(new(names[i][..^OpticsChart.Under.Length], inks[i]));
            else
                over.Add(new(names[i], inks[i]));
        }

        return new(under, white, over);
    }

    private static Backings BackingsOf(List<(Behind Behind, double[] Values)> read, List<OpticsReading> readings, List<string> notes)
    {
        double[] Of(Behind behind, IReadOnlyList<double> usual)
        {
            double[][] own = [.. read.Where(b => b.Behind == behind).Select(b => b.Values)];
            if (own.Length > 0)
                return [.. Enumerable.Range(0, Bands.Count).Select(band => Math.Clamp(own.Average(v => v[band]), 0, MostBacking))];
            if (readings.Exists(r => r.Behind == behind))
                notes.Add(Invariant($"The {BehindWords.Word(behind)} backing was not read alone (patch {BackingName}): {usual[0]:0.00} is taken in all bands."));
            return [.. usual];
        }

        return new(Of(Behind.Black, Backings.Usual.Black), Of(Behind.White, Backings.Usual.White));
    }

    private static void Beyond(ReadingSet set, List<string> notes)
    {
        if (set.Patches.Select(p => p.Spectrum).FirstOrDefault(s => s is not null) is not { } first)
            return;
        if (first.FirstNm > Bands.FirstNm || first.LastNm < Bands.LastNm)
            notes.Add(Invariant($"{set.Name} reaches from {first.FirstNm} nm to {first.LastNm} nm; beyond, the last band is taken."));
    }

    private static double[] InBands(Spectrum spectrum)
    {
        double[] values = new double[Bands.Count];
        for (int band = 0; band < values.Length; band++)
        {
            double place = Math.Clamp((Bands.Nm(band) - spectrum.FirstNm) / (double)spectrum.StepNm, 0, spectrum.Values.Count - 1);
            int below = Math.Min((int)place, spectrum.Values.Count - 2);
            values[band] = spectrum.Values[below] + ((place - below) * (spectrum.Values[below + 1] - spectrum.Values[below]));
        }

        return values;
    }
}
