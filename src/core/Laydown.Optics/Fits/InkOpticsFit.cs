using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Layers;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Fits;

/// <summary>K, S and strength of every ink from readings over black, over white and through; any two of the three suffice for a white.</summary>
/// <remarks>
/// The sheet first, from its bare readings; then the white, from all its steps and backings at once; then each colour on the bare sheet, on
/// white and under it. The model is that of looks: interfaces, backing and sheet are in it, so nothing is taken off by hand.
/// </remarks>
public static class InkOpticsFit
{
    /// <summary>Transmittance of a clear sheet that absorbs nothing, seen straight on: (1 − R0)/(1 + R0).</summary>
    private static readonly double Lossless = (1 - Boundary.Ink.Normal) / (1 + Boundary.Ink.Normal);

    /// <summary>Light over black, as a share, that a clear ink cannot account for and that makes scatter worth a try: three times what an
    /// instrument repeats to (from memory).</summary>
    private const double ScatterShows = 0.002;

    /// <summary>Share of the squares that must be left for scatter to be kept (own rule, on the safe side).</summary>
    private const double ScatterGain = 0.7;

    /// <summary>The optics of the inks of a table.</summary>
    /// <param name="table">Readings and backings.</param>
    /// <param name="sheet">The sheet as its stock says; a clear one is taken from its bare readings where there are some.</param>
    /// <param name="cancellation">Stops between rounds.</param>
    /// <returns>The optics, or why the readings carry none.</returns>
    public static Reading<FittedOptics> Fit(OpticsTable table, LookSheet sheet, CancellationToken cancellation)
    {
        InputFault[] faults = [.. Refusals(table)];
        if (faults.Length > 0)
            return Reading.Refused<FittedOptics>(faults);

        LookSheet bare = SheetOf(table, sheet, 0), clearer = SheetOf(table, sheet, 1);
        List<FittedInk> inks = [];
        string[] names = [.. table.Readings.SelectMany(r => r.Build.Inks).Distinct(StringComparer.Ordinal).OrderBy(n => n != OpticsBuild.WhiteName)];
        foreach (string name in names)
        {
            OpticsReading[] with = [.. table.Readings.Where(r => r.Build.Inks.Contains(name) && r.Build.Inks.All(i => i == name || inks.Exists(k => k.Ink == i)))];
            if (name == OpticsBuild.WhiteName)
                with = [.. with.Where(r => r.Build.Under.Count + r.Build.Over.Count == 0)];
            FittedInk ink = Solved(name, with, inks, bare, table.Backings, cancellation);
            inks.Add(ReferenceEquals(clearer, sheet) ? ink : Widened(ink, Solved(name, with, inks, clearer, table.Backings, cancellation)));
        }

        ReadingResidual[] residuals = [.. Residuals(table, inks, bare)];
        return Reading.Of(new FittedOptics(bare, inks, residuals, [.. OpticsChecks.Of(table, inks, bare.IsClear), .. EdgeLoss(table, inks, bare, cancellation)]));
    }

    /// <summary>Reflectance or transmittance that fitted inks give for a build, 36 bands.</summary>
    /// <param name="optics">The optics.</param>
    /// <param name="backings">What reflectance is read over.</param>
    /// <param name="asked">What is asked to lie there; every ink must be known.</param>
    /// <param name="behind">What stands behind.</param>
    /// <exception cref="ArgumentException">An ink has no optics.</exception>
    public static double[] Predict(FittedOptics optics, Backings backings, OpticsBuild asked, Behind behind)
    {
        if (asked.Inks.FirstOrDefault(i => optics.Find(i) is null) is { } unknown)
            throw new ArgumentException(Invariant($"{unknown}: found no optics; wanted one of {string.Join(", ", optics.Inks.Select(i => i.Ink))}."), nameof(asked));
        double[] seen = new double[Bands.Count];
        Light(optics.Sheet, backings, optics.Inks).Seen(Acting(optics.Inks, asked), behind, seen);
        return seen;
    }

    private static IEnumerable<InputFault> Refusals(OpticsTable table)
    {
        InputFault Fault(string field, string found, string wanted) => new("readings", null, field, found, wanted);
        foreach (OpticsReading r in table.Readings)
        {
            int at = Enumerable.Range(0, r.Values.Count).FirstOrDefault(i => !(r.Values[i] is >= -0.05 and <= 2), -1);
            if (r.Values.Count != Bands.Count)
                yield return Fault(r.Id, Invariant($"{r.Values.Count} bands"), Invariant($"{Bands.Count}"));
            else if (at >= 0)
                yield return Fault(r.Id, Invariant($"{BehindWords.Way(r.Behind)}, {Bands.Nm(at)} nm: {r.Values[at]}"), "0 to 2");
            else if (r.Behind == Behind.Unsaid)
                yield return Fault(r.Id, "no word of what stood behind", "black, white or lamp");
        }

        string[] names = [.. table.Readings.SelectMany(r => r.Build.Inks).Distinct(StringComparer.Ordinal)];
        if (names.Length == 0)
            yield return Fault("inks", "no patch with ink", "steps of white, or colours");
        foreach (string name in names)
        {
            OpticsReading[] full = [.. table.Readings.Where(r => Share(r.Build, name) == 1)];
            Behind[] ways = [.. table.Readings.Where(r => IsAlone(r.Build, name)).Select(r => r.Behind).Distinct()];
            if (full.Length == 0)
                yield return Fault(name, "no patch at 100 %", "at least one full laydown, to which K and S refer");
            if (name == OpticsBuild.WhiteName && ways.Length < 2)
                yield return Fault(name, Invariant($"steps read {string.Join(" and ", ways.Select(BehindWords.Way))} alone"),
                    "two of: over black, over white, through; one of them cannot tell K from S");
        }
    }

    private static bool IsAlone(OpticsBuild build, string name) => build.Inks.Contains(name) && build.Inks.All(i => i == name);

    private static double Share(OpticsBuild build, string name) =>
        name == OpticsBuild.WhiteName ? build.White : build.Over.Concat(build.Under).FirstOrDefault(i => i.Ink == name)?.Share ?? 0;

    // The mean of the bare readings, or that and some of its own standard error, which all bands share alike.
    private static LookSheet SheetOf(OpticsTable table, LookSheet sheet, double errors)
    {
        OpticsReading[] bare = [.. table.Readings.Where(r => r.Behind == Behind.Lamp && !r.Build.Inks.Any())];
        if (!sheet.IsClear || bare.Length == 0)
            return sheet;
        double[] mean = [.. Enumerable.Range(0, Bands.Count).Select(band => bare.Average(r => r.Values[band]))];
        double squares = bare.Sum(r => r.Values.Zip(mean).Sum(p => (p.First - p.Second) * (p.First - p.Second)));
        double error = bare.Length < 2 ? 0 : Math.Sqrt(squares / ((bare.Length - 1) * Bands.Count) / bare.Length);

        // Downward, so that no sheet comes to let through more than its surfaces do.
        return LookSheet.Clear([.. mean.Select(t => Math.Clamp(Math.Min(t, Lossless) - (errors * error), 0.001, Lossless))]);
    }

    // What K and S would change by, were the sheet another by its standard error, adds to theirs.
    private static FittedInk Widened(FittedInk ink, FittedInk other) => ink with
    {
        AbsorptionError = [.. ink.AbsorptionError.Select((e, b) => Math.Sqrt((e * e) + Math.Pow(other.Absorption[b] - ink.Absorption[b], 2)))],
        ScatterError = [.. ink.ScatterError.Select((e, b) => Math.Sqrt((e * e) + Math.Pow(other.Scatter[b] - ink.Scatter[b], 2)))],
    };

    private static FittedInk Solved(
        string name, OpticsReading[] readings, List<FittedInk> known, LookSheet sheet, Backings backings, CancellationToken cancellation)
    {
        bool white = name == OpticsBuild.WhiteName;
        BuildLight Light(LookInk ink) => InkOpticsFit.Light(sheet, backings, known, name, ink);
        double[] startS = white ? [.. Enumerable.Range(0, Bands.Count).Select(band => StartScatter(readings, band))] : Bands.Flat(0);
        double[] startK = white ? Bands.Flat(0.02) : StartAbsorption(name, readings, known, Light(LookInk.Clear));
        double Acting(InkShare i) => known.Single(k => k.Ink == i.Ink).ActingAt(i.Share);
        InkSolve solve = new InkSolve(name, white, white, readings, Acting, Light, startK, startS).Run(cancellation);
        if (white || solve.OverBlackMissing() < ScatterShows)
            return solve.Result();

        // A colour that sends light back over black scatters; it is kept so where the readings then fit clearly better.
        InkSolve turbid = new InkSolve(name, false, true, readings, Acting, Light, [.. solve.Absorption],
            Bands.Flat(0.02)).Run(cancellation);
        return (turbid.SumOfSquares < ScatterGain * solve.SumOfSquares ? turbid : solve).Result();
    }

    // Without absorption T = 1/(1 + S·X) and, over black, R = S·X/(1 + S·X).
    private static double StartScatter(OpticsReading[] readings, int band)
    {
        OpticsReading full = readings.Where(r => r.Build.White == 1).OrderByDescending(r => r.Behind == Behind.Lamp).ThenBy(r => r.Behind).First();
        double through = full.Behind == Behind.Lamp ? full.Values[band] : 1 - full.Values[band];
        return Math.Clamp((1 / Math.Max(through, 0.02)) - 1, 0.2, 40);
    }

    // What a solid takes away from the same build without it: once with a lamp behind, twice over a backing.
    private static double[] StartAbsorption(string name, OpticsReading[] readings, List<FittedInk> known, BuildLight without)
    {
        OpticsReading full = readings.Where(r => Share(r.Build, name) == 1)
            .OrderByDescending(r => r.Behind == Behind.Lamp).ThenByDescending(r => r.Behind == Behind.White && r.Build.Over.Count > 0).First();
        double[] bare = new double[Bands.Count];
        without.Seen(full.Build.With(i => i.Ink == name ? 0 : known.Single(k => k.Ink == i.Ink).ActingAt(i.Share)), full.Behind, bare);
        double crossed = full.Behind == Behind.Lamp ? 1 : 2;
        return [.. bare.Select((b, band) => Math.Clamp(Math.Log(Math.Max(b, 1e-4) / Math.Max(full.Values[band], 1e-4)) / crossed, 0, 8))];
    }

    private static OpticsBuild Acting(IReadOnlyList<FittedInk> inks, OpticsBuild asked) => asked.With(i => inks.First(k => k.Ink == i.Ink).ActingAt(i.Share));

    private static BuildLight Light(LookSheet sheet, Backings backings, IEnumerable<FittedInk> known, string? name = null,
        LookInk? ink = null)
    {
        Dictionary<string, LookInk> inks = known.ToDictionary(
            k => k.Ink, k => InkLook.Of(k.Ink == OpticsBuild.WhiteName, k.Absorption, k.Scatter), StringComparer.Ordinal);
        if (name is not null && ink is not null)
            inks[name] = ink;
        return new(sheet, backings, inks);
    }

    private static IEnumerable<ReadingResidual> Residuals(OpticsTable table, List<FittedInk> inks, LookSheet sheet)
    {
        BuildLight light = Light(sheet, table.Backings, inks);
        SpectralWeights weights = SpectralWeights.For(Illuminant.D50);
        foreach (OpticsReading r in table.Readings)
        {
            double[] seen = new double[Bands.Count];
            light.Seen(Acting(inks, r.Build), r.Behind, seen);
            Xyz read = weights.Of([.. r.Values.Select(v => Math.Max(v, 0))]), model = weights.Of(seen);
            yield return new(r.Id, r.Behind, r.Build, Ciede2000.Between(Lab.From(read, weights.White), Lab.From(model, weights.White)),
                (model.Y - read.Y) / 100);
        }
    }

    // Steps read over both backings say how much light comes through; an aperture that loses light at its edge reads less.
    private static IEnumerable<Finding> EdgeLoss(OpticsTable table, List<FittedInk> inks, LookSheet sheet, CancellationToken cancellation)
    {
        const double most = 0.03;
        OpticsReading[] white = [.. table.Readings.Where(r => IsAlone(r.Build, OpticsBuild.WhiteName))];
        OpticsReading[] over = [.. white.Where(r => r.Behind != Behind.Lamp)], through = [.. white.Where(r => r.Behind == Behind.Lamp)];
        if (inks.Count == 0 || inks[0].Ink != OpticsBuild.WhiteName || through.Length == 0 || over.Select(r => r.Behind).Distinct().Count() < 2)
            yield break;

        FittedInk alone = Solved(OpticsBuild.WhiteName, over, [], sheet, table.Backings, cancellation);
        BuildLight light = Light(sheet, table.Backings, [alone]);
        SpectralWeights weights = SpectralWeights.For(Illuminant.D50);
        List<double> ratios = [];
        foreach (OpticsReading r in through)
        {
            double[] seen = new double[Bands.Count];
            light.Seen(Acting([alone], r.Build), Behind.Lamp, seen);
            ratios.Add(weights.Of([.. r.Values.Select(v => Math.Max(v, 0))]).Y / weights.Of(seen).Y);
        }

        double middle = ratios.Order().ElementAt(ratios.Count / 2), error = alone.ScatterError.Zip(alone.Scatter).Average(p => p.First / p.Second);
        if (Math.Abs(1 - middle) > Math.Max(most, 3 * error))
            yield return OpticsChecks.EdgeLoss(middle);
    }
}
