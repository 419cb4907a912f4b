using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Layers;

namespace Laydown.Optics.Fits;

/// <summary>What is doubtful about readings of ink optics: more light out than in, steps that turn back, looks that hide what is behind.</summary>
public static class OpticsChecks
{
    private const string Practice = "common practice, no source";
    private const double Noise = 0.005;
    private static readonly SpectralWeights Weights = SpectralWeights.For(Illuminant.D50);

    /// <summary>How far light that is sent back inside a clear sheet lands from where it came: twice the thickness times the tangent of the
    /// angle of total reflection, mm.</summary>
    /// <param name="thicknessMm">Thickness of the sheet, mm, 0 to 100.</param>
    public static double SidewaysMm(double thicknessMm) =>
        2 * Bounds.Within(thicknessMm, 0, 100) * Math.Tan(Math.Asin(1 / Boundary.Ink.Index));

    private static Finding NotClear => Warn(
        "optics-sheet-not-clear", "The chart was printed on a sheet that spreads light; what the sheet does is taken from its stock, not from the bare patches.",
        "an opal or opaque sheet", "a clear sheet, thin, of the same material");

    /// <summary>Whether aperture and patch are wide enough for a sheet; a finding where they are not.</summary>
    /// <param name="apertureMm">Diameter of the instrument's aperture, mm.</param>
    /// <param name="patchMm">Shorter side of a patch, mm.</param>
    /// <param name="thicknessMm">Thickness of the sheet, mm.</param>
    public static IReadOnlyList<Finding> Aperture(double apertureMm, double patchMm, double thicknessMm)
    {
        double reach = SidewaysMm(thicknessMm), wanted = Bounds.Within(apertureMm, 0, 1000) + (2 * reach);
        return Bounds.Within(patchMm, 0, 10_000) >= wanted ? [] :
        [
            Warn("optics-patch-small",
                Invariant($"Light that is sent back inside the sheet lands up to {reach:0.0} mm aside; part of it leaves the patch and is not read."),
                Invariant($"patches of {patchMm:0.#} mm, aperture {apertureMm:0.#} mm, sheet {thicknessMm:0.##} mm"),
                Invariant($"patches of at least {wanted:0.#} mm, or a thinner sheet of the same material")),
        ];
    }

    /// <summary>Findings about readings and the inks fitted to them.</summary>
    internal static IEnumerable<Finding> Of(OpticsTable table, IReadOnlyList<FittedInk> inks, bool sheetIsClear) =>
        [.. sheetIsClear ? (IEnumerable<Finding>)[] : [NotClear], .. Gains(table), .. Crossed(table), .. NotMonotone(table),
            .. Weak(table), .. Unsettled(inks)];

    /// <summary>The finding that readings through and over backings contradict each other.</summary>
    internal static Finding EdgeLoss(double ratio) => Warn(
        "optics-edge-loss",
        ratio < 1
            ? "Less light was read through than the readings over black and over white leave room for: the aperture loses light at its edge, or the lamp was read in another way."
            : "More light was read through than the readings over black and over white leave room for: stray light, or an aperture that loses light in reflection.",
        Invariant($"{100 * (ratio - 1):+0.0;-0.0} % through"), "within 3 %: a wide aperture, a thin sheet, the lamp alone read as 100 %");

    private static IEnumerable<Finding> Gains(OpticsTable table)
    {
        foreach (IGrouping<string, OpticsReading> patch in table.Readings.GroupBy(r => r.Id))
        {
            OpticsReading? over = patch.FirstOrDefault(r => r.Behind == Behind.Black), through = patch.FirstOrDefault(r => r.Behind == Behind.Lamp);
            for (int band = 0; band < Bands.Count; band++)
            {
                double most = patch.Max(r => r.Values[band]), sum = (over?.Values[band] ?? 0) + (through?.Values[band] ?? 0);
                if (most <= 1.05 && sum <= 1.05)
                    continue;
                yield return Warn("optics-gains-light", Invariant($"More light comes out of patch {patch.Key} than goes in."),
                    most > 1.05 ? Invariant($"{most:0.000} at {Bands.Nm(band)} nm") : Invariant($"{over!.Values[band]:0.000} over black and {through!.Values[band]:0.000} through at {Bands.Nm(band)} nm"),
                    "a sum of at most 1: calibrate the instrument, and read the lamp alone as 100 %");
                break;
            }
        }
    }

    private static IEnumerable<Finding> Crossed(OpticsTable table) =>
        from patch in table.Readings.GroupBy(r => r.Id)
        let black = patch.FirstOrDefault(r => r.Behind == Behind.Black)
        let white = patch.FirstOrDefault(r => r.Behind == Behind.White)
        where black is not null && white is not null
        let difference = Luminous(black) - Luminous(white)
        where difference > Noise
        select Warn("optics-backings-crossed", Invariant($"Patch {patch.Key} looks lighter over black than over white."),
            Invariant($"{100 * difference:0.0} % lighter"), "darker over black: were the backings mixed up?");

    // Alone on the sheet, more ink makes a colour darker in every light; a white lighter over black and darker through.
    private static IEnumerable<Finding> NotMonotone(OpticsTable table)
    {
        var series = table.Readings.Where(r => r.Build.Under.Count == 0 && r.Build.Inks.Count() == 1)
            .GroupBy(r => (Ink: r.Build.Inks.Single(), r.Behind));
        foreach (var one in series)
        {
            bool white = one.Key.Ink == OpticsBuild.WhiteName;
            if (white && one.Key.Behind == Behind.White)
                continue;
            double sign = white && one.Key.Behind == Behind.Black ? 1 : -1;
            var steps = one.GroupBy(r => white ? r.Build.White : r.Build.Over[0].Share).OrderBy(g => g.Key)
                .Select(g => (g.Key, Mean: sign * g.Average(Luminous))).ToArray();
            for (int i = 1; i < steps.Length; i++)
            {
                if (steps[i].Mean >= steps[i - 1].Mean - Noise)
                    continue;
                yield return Warn("optics-not-monotone",
                    Invariant($"{one.Key.Ink} {BehindWords.Way(one.Key.Behind)}: the step from {100 * steps[i - 1].Key:0} % to {100 * steps[i].Key:0} % turns back."),
                    Invariant($"{100 * (steps[i - 1].Mean - steps[i].Mean):0.0} % the wrong way"), "more ink, more effect: were patches mixed up, or did a nozzle fail?");
            }
        }
    }

    private static IEnumerable<Finding> Weak(OpticsTable table)
    {
        OpticsReading[] full = [.. table.Readings.Where(r => r.Build.White == 1 && r.Build.Under.Count + r.Build.Over.Count == 0)];
        OpticsReading[] black = [.. full.Where(r => r.Behind == Behind.Black)], white = [.. full.Where(r => r.Behind == Behind.White)];
        if (full.Any(r => r.Behind == Behind.Lamp) || black.Length == 0 || white.Length == 0)
            yield break;
        double apart = white.Average(Luminous) - black.Average(Luminous);
        if (apart < 4 * Noise)
            yield return Warn("optics-weak", "The full white hides its backing: over black and over white it looks the same, and S rests on the thin steps alone.",
                Invariant($"{100 * apart:0.0} % apart"), "readings through, which tell S where the white hides");
    }

    private static IEnumerable<Finding> Unsettled(IReadOnlyList<FittedInk> inks)
    {
        foreach (FittedInk ink in inks)
        {
            bool white = ink.Ink == OpticsBuild.WhiteName;
            IReadOnlyList<double> values = white ? ink.Scatter : ink.Absorption, errors = white ? ink.ScatterError : ink.AbsorptionError;
            int[] loose = [.. Enumerable.Range(0, Bands.Count).Where(b => !(errors[b] <= 0.1 * Math.Max(values[b], 0.5)))];
            if (loose.Length > 0)
                yield return Warn("optics-unsettled", Invariant($"{ink.Ink}: its readings hardly tell {(white ? "S·X" : "K·X")} in {loose.Length} of {Bands.Count} bands."),
                    Invariant($"{values[loose[0]]:0.00} ± {errors[loose[0]]:0.00} at {Bands.Nm(loose[0])} nm"), "an error under 10 %: more steps, more repeats, or thinner steps of a dark ink");
        }
    }

    private static double Luminous(OpticsReading reading) => Weights.Of([.. reading.Values.Select(v => Math.Max(v, 0))]).Y / 100;

    private static Finding Warn(string code, string what, string measured, string wanted) => new(code, Severity.Warn, null, null, what,
        measured, wanted, null, Practice);
}
