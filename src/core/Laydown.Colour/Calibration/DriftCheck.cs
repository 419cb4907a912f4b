using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>Compares a new reading of a wedge or control strip with the one that a calibration keeps.</summary>
/// <remarks>
/// Stock, full inks or overprints beyond their limits ask for a new characterisation, as no curve can bring them back; tones alone ask
/// for new curves. Both readings are of the same patches with the same curves in the press.
/// </remarks>
public static class DriftCheck
{
    /// <summary>The verdict on a new reading.</summary>
    /// <param name="kept">Readings that the calibration was made from, or its first control strip.</param>
    /// <param name="now">New readings: the same inks, and at least the bare stock and each full ink among the same patches.</param>
    /// <param name="limits">How far the press may move.</param>
    /// <param name="file">Name of the new file for messages.</param>
    public static Reading<DriftReport> Compare(ReadingSet kept, ReadingSet now, DriftLimits limits, string file)
    {
        if (!kept.InkNames.SequenceEqual(now.InkNames, StringComparer.OrdinalIgnoreCase))
            return Refused(file, "inks", string.Join(", ", now.InkNames), string.Join(", ", kept.InkNames));
        foreach (Patch patch in now.Patches)
        {
            if (!double.IsFinite(patch.Lab.L + patch.Lab.A + patch.Lab.B) || patch.Inks.Count != kept.InkNames.Count)
                return Refused(file, Invariant($"patch {patch.Id}"), "no measured colour", "a colour for every patch");
        }

        Dictionary<string, Lab> read = Means(now);
        (Patch Patch, Lab Then, Lab Now)[] pairs = [.. Means(kept).Where(k => read.ContainsKey(k.Key))
            .Select(k => (kept.Patches.First(p => Key(p) == k.Key), k.Value, read[k.Key]))];
        List<InputFault> missing = Missing(kept, pairs, file);
        return missing.Count > 0 ? Reading.Refused<DriftReport>(missing) : Reading.Of(Report(kept.InkNames, pairs, limits));
    }

    private static List<InputFault> Missing(ReadingSet kept, (Patch Patch, Lab Then, Lab Now)[] pairs, string file)
    {
        List<InputFault> faults = [];
        if (!pairs.Any(p => p.Patch.Inks.All(i => i < 1e-4)))
            faults.Add(new(file, null, "patches", "no bare stock that both readings have", "one patch without ink"));
        for (int ink = 0; ink < kept.InkNames.Count; ink++)
        {
            if (!pairs.Any(p => IsSolid(p.Patch, ink)))
                faults.Add(new(file, null, "patches of " + kept.InkNames[ink], "no full ink that both readings have",
                    "one patch of the full ink alone"));
        }

        return faults;
    }

    private static DriftReport Report(IReadOnlyList<string> names, (Patch Patch, Lab Then, Lab Now)[] pairs, DriftLimits limits)
    {
        PatchDrift[] patches = [.. pairs.Select(p => new PatchDrift(p.Patch.Id, p.Patch.Inks, Ciede2000.Between(p.Then, p.Now)))];
        double paper = patches.First(p => p.Inks.All(i => i < 1e-4)).Difference;
        double[] over = [.. patches.Where(p => p.Inks.Count(i => i > 1e-4) > 1).Select(p => p.Difference)];
        InkDrift[] inks = [.. names.Select((n, i) => OfInk(n, i, pairs))];
        (DriftVerdict verdict, IReadOnlyList<string> reasons) = Judge(paper, over.Length > 0 ? over.Average() : null, inks, limits);
        return new(verdict, reasons, Change("change of the bare stock", paper, 1),
            Change("mean change", patches.Average(p => p.Difference), patches.Length),
            over.Length > 0 ? Change("mean change of overprints", over.Average(), over.Length) : null, inks, patches);
    }

    private static (DriftVerdict Verdict, IReadOnlyList<string> Reasons) Judge(double paper, double? over, InkDrift[] inks,
        DriftLimits limits)
    {
        List<(DriftVerdict Verdict, double Share, string Text)> all =
        [
            (DriftVerdict.Recharacterise, paper / limits.PaperDifference,
                Invariant($"The bare stock moved by {paper:0.0} ΔE00; {limits.PaperDifference} allowed.")),
        ];
        if (over is { } mean)
            all.Add((DriftVerdict.Recharacterise, mean / limits.OverprintMean,
                Invariant($"Overprints moved by {mean:0.0} ΔE00 in the mean; {limits.OverprintMean} allowed.")));
        foreach (InkDrift ink in inks)
        {
            all.Add((DriftVerdict.Recharacterise, ink.SolidDifference / limits.SolidDifference,
                Invariant($"{ink.Ink}: the full ink moved by {ink.SolidDifference:0.0} ΔE00; {limits.SolidDifference} allowed.")));
            all.Add((DriftVerdict.Relinearise, Math.Abs(ink.ToneChangePercent) / limits.TonePercent,
                Invariant($"{ink.Ink}: tone moved by {ink.ToneChangePercent:+0.0;-0.0;0.0} % at {ink.AtPercent:0.#} %; {limits.TonePercent} % allowed.")));
        }

        // Overprints move with the tones: they ask for a new chart only where the tones of every ink hold.
        bool tones = all.Any(a => a.Verdict == DriftVerdict.Relinearise && a.Share > 1);
        (DriftVerdict Verdict, double Share, string Text)[] beyond = [.. all.Where(a => a.Share > 1)
            .Where(a => !(tones && a.Text.StartsWith("Overprints", StringComparison.Ordinal)))];
        return beyond.Length == 0
            ? (DriftVerdict.Use, ["Nearest to its limit: " + all.MaxBy(a => a.Share).Text])
            : (beyond.Max(b => b.Verdict), [.. beyond.OrderByDescending(b => b.Verdict).ThenByDescending(b => b.Share).Select(b =>
                b.Text)]);
    }

    // Each reading counts its tones between its own stock and full ink: what a curve can bring back.
    private static InkDrift OfInk(string name, int ink, (Patch Patch, Lab Then, Lab Now)[] pairs)
    {
        (Patch Patch, Lab Then, Lab Now)[] own = [.. pairs.Where(p => p.Patch.Inks.Where((_, i) => i != ink).All(i => i < 1e-4))];
        (Patch _, Lab paper, Lab paperNow) = own.First(p => p.Patch.Inks[ink] < 1e-4);
        (Patch _, Lab solid, Lab solidNow) = own.First(p => IsSolid(p.Patch, ink));
        (double Change, double At) most = (0, 0);
        if (ToneValues.Distance(paper, solid) > 0 && ToneValues.Distance(paperNow, solidNow) > 0)
        {
            most = own.Select(p => (ToneValues.Sctv(p.Now, paperNow, solidNow) - ToneValues.Sctv(p.Then, paper, solid),
                p.Patch.Inks[ink] * 100))
                .MaxBy(c => Math.Abs(c.Item1));
        }

        return new(name, most.Change, most.At, Ciede2000.Between(solid, solidNow));
    }

    private static bool IsSolid(Patch patch, int ink) =>
        patch.Inks[ink] > 1 - 1e-4 && patch.Inks.Where((_, i) => i != ink).All(i => i < 1e-4);

    private static Dictionary<string, Lab> Means(ReadingSet set) => set.Patches.GroupBy(Key).ToDictionary(g => g.Key,
        g => new Lab(g.Average(p => p.Lab.L), g.Average(p => p.Lab.A), g.Average(p => p.Lab.B)), StringComparer.Ordinal);

    private static string Key(Patch patch) => string.Join(' ', patch.Inks.Select(i => Invariant($"{Math.Round(i, 4):0.0000}")));

    private static Figure Change(string name, double value, int patches) =>
        new(name, value, "ΔE00", Invariant($"{patches} {(patches == 1 ? "patch" : "patches")} of both readings"), "Sharma2005");

    private static Reading<DriftReport> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<DriftReport>(new InputFault(file, null, field, found, wanted));
}
