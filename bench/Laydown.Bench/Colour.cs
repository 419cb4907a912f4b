using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Laydown.Colour.Fits;
using Laydown.Colour.Gamuts;
using Laydown.Colour.Inks;
using Laydown.Colour.Inversion;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Formats.Icc;
using Laydown.Formats.Readings;
using Laydown.Measures;

namespace Laydown.Bench;

/// <summary>Fits, tables, profiles and links on public charts, and on an invented print with light inks.</summary>
/// <remarks>
/// <c>--instances</c> names a folder of charts (CGATS.17, CSV); without it the charts of tests/data. Seven-ink charts are fitted
/// thoroughly. The nodes row takes only patches on CMY 0, 40, 70, 100 % × K 0, 40, 80, 100 % and predicts all others.
/// </remarks>
internal sealed class Colour
{
    private const double TotalLimit = 3;
    private const int Samples = 5000;
    private readonly List<ColourRow> rows = [];
    private readonly StringBuilder sums = new();
    private readonly CancellationToken cancellation;

    private Colour(CancellationToken cancellation) => this.cancellation = cancellation;

    /// <summary>Runs all.</summary>
    public static ColourResult Run(BenchArguments arguments, CancellationToken cancellation)
    {
        Colour bench = new(cancellation);
        foreach (string path in Charts(arguments.Instances))
            bench.Chart(path);
        bench.LightInks();
        using Process self = Process.GetCurrentProcess();
        return new(
            "colour", bench.rows, self.TotalProcessorTime.TotalSeconds, self.PeakWorkingSet64 / 1048576.0,
            Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(bench.sums.ToString()))));
    }

    private static IEnumerable<string> Charts(string? folder)
    {
        string from = folder ?? Path.Combine(Environment.GetEnvironmentVariable("LAYDOWN_BENCH_RESULTS") ?? "bench/results", "../../tests/data/colour");
        return Directory.EnumerateFiles(from).Where(f => Path.GetFileName(f).Contains("FOGRA", StringComparison.Ordinal)
            || Path.GetFileName(f).StartsWith("TR0", StringComparison.Ordinal) || Path.GetFileName(f).StartsWith("CGATS21-", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);
    }

    private void Chart(string path)
    {
        string name = Path.GetFileName(path).Split('.')[0];
        Reading<ReadingSet> read = ReadingsFile.Read(Path.GetFileName(path), File.ReadAllBytes(path));
        if (!read.IsTaken)
            throw new InvalidOperationException(string.Join(Environment.NewLine, read.Faults));
        ReadingSet readings = read.Value;
        bool many = readings.InkNames.Count > 4;
        if (!many)
            NodesOnly(name, readings);
        foreach (FitKind kind in many ? [FitKind.Regression] : Enum.GetValues<FitKind>())
        {
            FittedPrint? fit = null;
            Timed(name, Invariant($"held out, 5 folds: {kind}"), () =>
            {
                fit = PrintFit.Fit(name, readings, new(kind, 5, 1, many), null, cancellation) is { IsTaken: true } taken ? taken.Value : null;
                return fit is null ? [] : [.. fit.Patches.Select(p => p.DeltaE00)];
            });
            if (fit is not null && kind == FitKind.Regression)
                Separation(name, fit);
        }
    }

    private void NodesOnly(string name, ReadingSet readings)
    {
        bool OnNode(Patch patch) => patch.Inks.Index().All(i => (i.Index < 3 ? new[] { 0, 0.4, 0.7, 1 } : [0, 0.4, 0.8, 1]).Any(l => Math.Abs(l - i.Item) < 1e-6));
        ReadingSet nodes = readings with { Patches = [.. readings.Patches.Where(OnNode)] };
        foreach (FitKind kind in new[] { FitKind.Cellular, FitKind.Regression })
        {
            Timed(name, Invariant($"{nodes.Patches.Count} node patches, the rest held out: {kind}"), () =>
            {
                Reading<FittedPrint> fit = PrintFit.Fit(name, nodes, new(kind, 2, 1, false), null, cancellation);
                if (!fit.IsTaken)
                    return [];
                GridModel model = new(fit.Value.Grid);
                return [.. readings.Patches.Where(p => !OnNode(p)).Select(p => Ciede2000.Between(p.Lab, model.ToLab([.. p.Inks])))];
            });
        }
    }

    private void Separation(string name, FittedPrint fit)
    {
        GridModel model = new(fit.Grid);
        InkLimits limits = new([.. fit.InkNames.Select(_ => 1.0)], TotalLimit);
        InkWishes wishes = InkWishes.For(fit.InkNames);
        ProfileTables? tables = null;
        byte[] profile = [];
        Timed(name, "profile tables 33³ and ICC bytes (s)", () =>
        {
            tables = ProfileTableMaker.Make(model, limits, BlackPolicy.Medium, wishes, fit.InkNames.Count <= 4 ? 17 : 6, 33, null, cancellation);
            profile = OutputProfile.Write(
                tables, "bench", "none", OutputProfileOptions.Usual with { Edition = IccEdition.V4, InkNames = fit.InkNames, Limits = limits });
            return [];
        });
        RoundTrip(name, model, limits, profile);
        Neutral(name, model, limits, wishes, profile);
        InkInverse inverse = ProfileTableMaker.InverseFor(model, limits, BlackPolicy.Medium, wishes);
        Link(name, "RGB", LinkMaker.FromRgb(inverse, fit.InkNames, Gamut.Of(model, limits.PerInk, limits.Total)));
        if (fit.InkNames.Count > 4)
            Link(name, "CMYK", LinkMaker.FromCmyk(inverse, fit.InkNames, new FixedInks(model, [0, 1, 2, 3])));
    }

    // Random inks within the limits → colour by the model → inks by Little CMS and the profile → colour by the model.
    private void RoundTrip(string name, GridModel model, InkLimits limits, byte[] profile)
    {
        using IccTransform there = IccTransform.Precise(
            IccProfile.Lab, IccProfile.Read("bench.icc", profile).Value, IccIntent.RelativeColorimetric, false).Value;
        Timed(name, "round trip through the profile, random inks", () =>
        {
            List<double> labs = [];
            for (int i = 1; labs.Count < 3 * Samples; i++)
            {
                double[] inks = Scatter(i, model.Inks);
                if (inks.Sum() > limits.Total)
                    continue;
                var colour = Lab.From(model.ToXyz(inks), model.White);
                labs.AddRange([colour.L, colour.A, colour.B]);
            }

            double[] found = new double[Samples * model.Inks];
            there.Row([.. labs], found);
            return [.. Enumerable.Range(0, Samples).Select(i => Ciede2000.Between(
                new(labs[3 * i], labs[(3 * i) + 1], labs[(3 * i) + 2]), Lab.From(model.ToXyz(found.AsSpan(i * model.Inks, model.Inks)), model.White)))];
        });
    }

    private void Neutral(string name, GridModel model, InkLimits limits, InkWishes wishes, byte[] profile)
    {
        using IccTransform there = IccTransform.Precise(
            IccProfile.Lab, IccProfile.Read("bench.icc", profile).Value, IccIntent.RelativeColorimetric, false).Value;
        double darkest = ProfileTableMaker.DarkestNeutral(ProfileTableMaker.InverseFor(model, limits, BlackPolicy.Medium, wishes)).L;
        List<double> chroma = [], falls = [0], bends = [0];
        double[]? last = null, before = null;
        for (double l = 100; l > darkest + 0.5; l -= 0.5)
        {
            double[] inks = new double[model.Inks];
            there.Row([l, 0, 0], inks);
            chroma.Add(Lab.From(model.ToXyz(inks), model.White).Chroma);
            double[] all = [.. inks.Where((_, i) => wishes.LightPairs.All(p => p.Light != i)), inks.Sum()];
            falls.AddRange(last is null ? [] : all.Zip(last, (now, then) => Math.Max(0, 100 * (then - now))));
            bends.AddRange(before is null ? [] : all.SkipLast(1).Select((now, i) => 100 * Math.Abs(now - (2 * last![i]) + before[i])));
            (before, last) = (last, all);
        }

        Timed(name, "neutral ramp, step 0.5 L*: chroma", () => [.. chroma]);
        Timed(name, "neutral ramp: fall of an ink or of the sum a step, %", () => [.. falls]);
        Timed(name, "neutral ramp: second difference of an ink, %", () => [.. bends]);
    }

    private void Link(string name, string from, LinkMaker maker)
    {
        LinkChoice? choice = null;
        Timed(name, Invariant($"link {from}: choosing the table (s)"), () =>
        {
            choice = LinkChoice.Smallest(maker, null, cancellation);
            return [];
        });
        rows.Add(new(
            name, Invariant($"link {from} → inks, table against exact way (P99): {choice!.Table.Steps} steps, bend {choice.Bend}"),
            4000, choice.MeanError, choice.P99Error, choice.MaxError, 0, 0));
    }

    // Readings → profile with six inks, the whole way, on an invented print: generic inks, dot gain, noise of about 0.15 in L*, a*, b*.
    private void LightInks()
    {
        string[] names = ["Cyan", "Magenta", "Yellow", "Black", "Light Cyan", "Light Magenta"];
        double[][] density = [.. Enumerable.Range(0, 6).Select(i => GenericUvInks.Density((ProcessInk)i))];
        NeugebauerModel truth = new([.. Enumerable.Range(0, 64).Select(j => Enumerable.Range(0, Bands.Count).Select(band => (0.86 * Math.Pow(
            10, -2 * Math.Min(1.6, Enumerable.Range(0, 6).Where(i => ((j >> i) & 1) != 0).Sum(i => density[i][band])))) + 0.004).ToArray())],
            2, SpectralWeights.For(Illuminant.D50));
        List<double[]> mixtures = [new double[6]];
        for (int ink = 0; ink < 6; ink++)
            mixtures.AddRange(Enumerable.Range(1, 11).Select(s => Enumerable.Range(0, 6).Select(i => i == ink ? s / 11.0 : 0).ToArray()));
        for (int i = 1; mixtures.Count < 1400; i++)
        {
            double[] mixture = [.. Scatter(i, 6).Select(v => v < 0.35 ? 0 : (v - 0.35) / 0.65)];
            if (mixture.Sum() <= 2.6)
                mixtures.Add(mixture);
        }

        Patch[] patches = [.. mixtures.Select((m, i) =>
        {
            var look = Lab.From(truth.ToXyz([.. m.Select(c => Math.Pow(c, 0.8))]), WhitePoints.Pcs);
            double[] noise = Scatter(i + 7, 3);
            return new Patch(Invariant($"{i}"), m, new(look.L + (0.5 * (noise[0] - 0.5)), look.A + (0.5 * (noise[1] - 0.5)), look.B + (0.5 * (noise[2] - 0.5))), null);
        })];
        ReadingSet readings = new("six inks, invented", names, MeasuredHow.Unsaid, patches);
        FittedPrint? fit = null;
        Timed("six inks, invented", "held out, 5 folds: all kinds tried", () =>
        {
            fit = PrintFit.Fit("six", readings, FitChoices.Usual, null, cancellation).Value;
            return [.. fit.Patches.Select(p => p.DeltaE00)];
        });
        Separation("six inks, invented", fit!);
    }

    private void Timed(string set, string what, Func<IReadOnlyList<double>> work)
    {
        cancellation.ThrowIfCancellationRequested();
        using Process self = Process.GetCurrentProcess();
        double cpu = self.TotalProcessorTime.TotalSeconds;
        Stopwatch watch = Stopwatch.StartNew();
        IReadOnlyList<double> values = work();
        double wall = watch.Elapsed.TotalSeconds;
        self.Refresh();
        ResidualSummary? summary = values.Count > 0 ? ResidualSummary.Of(values) : null;
        rows.Add(new(
            set, what, values.Count, summary?.Mean ?? 0, summary?.P95 ?? 0, summary?.Max ?? 0, wall, self.TotalProcessorTime.TotalSeconds - cpu));
        foreach (double value in values)
            sums.Append(value.ToString("F6", CultureInfo.InvariantCulture)).Append('\n');
    }

    private static double[] Scatter(int index, int count) => [.. Enumerable.Range(0, count).Select(k =>
    {
        double value = index * Math.Sqrt(new[] { 2, 3, 5, 7, 11, 13, 17, 19 }[k]);
        return value - Math.Floor(value);
    })];
}
