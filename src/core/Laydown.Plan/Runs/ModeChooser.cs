using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Cure;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Plan.Runs;

/// <summary>Picks the fastest mode that this work can bear, and says why and why not the others.</summary>
/// <remarks>
/// Some limits are hard (print condition, coverage, layers, cure). Others are grades of looks: distance, text, codes, lamp, bands. When no mode keeps the latter,
/// the one with the faintest bands of those that keep all but bands is taken, else the finest of those that keep the hard limits, and that is said. Grades by distance are the shop's own presets: under 1 m, 1 m to 3 m, from 3 m on.
/// </remarks>
public static class ModeChooser
{
    /// <summary>Device dots wanted across a stem or line; common practice, no source.</summary>
    public const int DotsPerStem = 3;

    /// <summary>Device dots wanted across one module of a code; common practice, no source.</summary>
    public const int DotsPerModule = 4;

    /// <summary>Stem of a plain letter as a share of its size: capitals about 0.7 of the size, stem a seventh of that; from memory.</summary>
    private const double StemPerSize = 0.1;

    /// <summary>Resolution of the eye at 1 m, 1 minute of arc: 3438 / 39.37 inches, ppi.</summary>
    private const double EyePpiAt1M = 87.3;

    /// <summary>Picks a mode of <paramref name="press"/>.</summary>
    /// <param name="press">The press.</param>
    /// <param name="condition">The print condition; modes it is not calibrated for are out.</param>
    /// <param name="inkSet">The inks.</param>
    /// <param name="demand">What the mode must bear.</param>
    /// <param name="bands">Figures the bands of a mode; null where nobody does, then bands do not count.</param>
    /// <returns>The choice, or faults when no mode can print this stack at all.</returns>
    public static Reading<ModeChoice> Choose(
        PressDescription press, PrintCondition condition, InkSet inkSet, ModeDemand demand, BandScore.Source? bands = null)
    {
        Bounds.Within(demand.ViewingDistanceM, 0.01, 10_000);
        List<Judged> all = [.. press.Modes.Select(m => Judge(press, condition, inkSet, demand, m, bands))];
        List<Judged> able = [.. all.Where(j => j.Cannot is null)];
        if (able.Count == 0)
        {
            return Reading.Refused<ModeChoice>([.. all.Select(j => new InputFault(
                Invariant($"press {press.Id}"), null, Invariant($"mode {j.Mode.Id}"), j.Cannot ?? "", "a mode that can print this stack")),
                .. press.Modes.Count == 0 ? [new InputFault(Invariant($"press {press.Id}"), null, "modes", "none", "at least one mode")] : Array.Empty<InputFault>()]);
        }

        List<Judged> fine = [.. able.Where(j => j.Coarse is null)], good = [.. fine.Where(j => j.Bands is not { IsBorne: false })];
        Judged best = good.Count > 0
            ? good.OrderBy(j => j.Seconds).ThenBy(j => j.Mode.Id, StringComparer.Ordinal).First()
            : fine.Count > 0
            ? fine.OrderBy(j => j.Bands?.VisibleDeltaL ?? 0).ThenBy(j => j.Seconds).ThenBy(j => j.Mode.Id, StringComparer.Ordinal).First()
            : able.OrderByDescending(j => j.Mode.Quality).ThenByDescending(j => j.Mode.ScanDpi * j.Mode.FeedDpi).ThenByDescending(j => j.Mode.Passes).First();
        return Reading.Of(new ModeChoice(best.Mode.Id, Reasons(best, good.Count, demand),
            [.. all.Where(j => j != best).Select(j => new RejectedMode(j.Mode.Id, j.Cannot ?? j.Coarse ?? Banded(j, demand) ?? Slower(j, best)))]));
    }

    /// <summary>Coarsest grade that bears being looked at from <paramref name="distanceM"/>; the shop's own presets.</summary>
    /// <remarks>Lit from behind, thin spots and bands shine through, so one grade finer is taken; common practice, no source.</remarks>
    public static PrintQuality GradeFor(double distanceM, bool lit = false)
    {
        PrintQuality grade = distanceM < 1 ? PrintQuality.High : distanceM < 3 ? PrintQuality.Normal : PrintQuality.Draft;
        return lit && grade < PrintQuality.High ? grade + 1 : grade;
    }

    private static Judged Judge(PressDescription press, PrintCondition condition, InkSet inkSet, ModeDemand demand, Mode mode, BandScore.Source? bands)
    {
        if (!condition.ModeIds.Contains(mode.Id, StringComparer.Ordinal))
            return new(mode, 0, Invariant($"Print condition {condition.Id} is not calibrated for it."), null, null);

        double seconds = 0;
        foreach (int layers in demand.LayersByFace)
        {
            Reading<ScanPlan> scan = Scanning.Of(press, mode, demand.Sheet.WidthMm, demand.Sheet.HeightMm, layers);
            if (!scan.IsTaken)
                return new(mode, 0, scan.Faults[0].ToString(), null, null);
            seconds += scan.Value.Seconds;
        }

        // Bands take longest to figure, so only modes that are not out already are asked.
        string? underCured = UnderCured(press, inkSet, demand, mode), coarse = TooCoarse(demand, mode);
        return new(mode, seconds, underCured, coarse, underCured is null && coarse is null ? bands?.Invoke(press, mode, demand) : null);
    }

    private static string? Banded(Judged one, ModeDemand demand) => one.Bands is { IsBorne: false } bands
        ? Invariant($"Bands of {bands.VisibleDeltaL:0.00} L* would be seen from {demand.ViewingDistanceM:0.##} m, mostly by {bands.Because}; {bands.MostDeltaL:0.0} L* is borne.")
        : null;

    private static string? UnderCured(PressDescription press, InkSet inkSet, ModeDemand demand, Mode mode)
    {
        double dose = Dose.OfLastLayer(press.Lamp, mode).Value;
        double wanted = demand.Stack.Layers.SelectMany(l => LayerRoles.Of(l.Group)).Distinct()
            .Select(inkSet.Find).OfType<Ink>().Select(i => i.DoseMjPerCm2).DefaultIfEmpty(0).Max();
        return dose + 1e-9 < wanted ? Invariant($"It cures with {dose:0} mJ/cm²; the inks want {wanted:0}.") : null;
    }

    private static string? TooCoarse(ModeDemand demand, Mode mode)
    {
        double distance = demand.ViewingDistanceM;
        int dpi = Math.Min(mode.ScanDpi, mode.FeedDpi);
        double pitchMm = 25.4 / dpi;
        PrintQuality grade = GradeFor(distance, demand.Stack.Lit);
        if (mode.Quality < grade)
            return Invariant($"{Word(mode.Quality)} is coarser than {Word(grade).ToLowerInvariant()}, the shop's grade for {distance:0.##} m{(demand.Stack.Lit ? " lit from behind" : "")}.");
        if (dpi < 2 * EyePpiAt1M / distance)
            return Invariant($"{dpi} dpi is under twice what the eye resolves at {distance:0.##} m ({2 * EyePpiAt1M / distance:0} ppi).");
        if (demand.SmallestTextPt is { } points && points * 25.4 / 72 * StemPerSize < DotsPerStem * pitchMm)
            return Invariant($"Text of {points:0.#} pt has stems of {points * 25.4 / 72 * StemPerSize / pitchMm:0.0} dots; wanted {DotsPerStem}.");
        if (demand.SmallestModuleMm is { } module && module < (DotsPerModule - 0.01) * pitchMm)
            return Invariant($"A code with modules of {module:0.00} mm has {module / pitchMm:0.0} dots to a module; wanted {DotsPerModule}.");
        return null;
    }

    private static List<string> Reasons(Judged best, int good, ModeDemand demand)
    {
        List<string> reasons = [];
        reasons.Add(good > 0
            ? Invariant($"Fastest of {good} mode(s) that bear this work: {best.Seconds:0} s for {demand.Sheet} with {demand.Stack.Layers.Count} layer(s).")
            : best.Coarse is null
            ? Invariant($"No mode keeps every wish; this one has the faintest bands. {Banded(best, demand)} Show the customer a printed proof.")
            : Invariant($"No mode keeps every wish; this is the finest that can print it. {best.Coarse} Show the customer a printed proof."));
        reasons.Add(Invariant($"Looked at from {demand.ViewingDistanceM:0.##} m{(demand.Stack.Lit ? ", lit from behind" : "")}: {Word(GradeFor(demand.ViewingDistanceM, demand.Stack.Lit)).ToLowerInvariant()} or finer; it is {Word(best.Mode.Quality).ToLowerInvariant()}, {best.Mode.ScanDpi} × {best.Mode.FeedDpi} dpi in {best.Mode.Passes} passes."));
        if (best.Coarse is null && demand.SmallestTextPt is { } points)
            reasons.Add(Invariant($"Smallest text {points:0.#} pt: stems of {points * StemPerSize / 72 * Math.Min(best.Mode.ScanDpi, best.Mode.FeedDpi):0.0} dots."));
        if (best.Coarse is null && demand.SmallestModuleMm is { } module)
            reasons.Add(Invariant($"Narrowest code module {module:0.00} mm: {module / 25.4 * Math.Min(best.Mode.ScanDpi, best.Mode.FeedDpi):0.0} dots."));
        if (best.Bands is { IsBorne: true } bands)
            reasons.Add(Invariant($"Bands: at most {bands.VisibleDeltaL:0.00} L* is seen of them from {demand.ViewingDistanceM:0.##} m, mostly by {bands.Because}; {bands.MostDeltaL:0.0} L* is borne."));
        return reasons;
    }

    private static string Slower(Judged one, Judged best) => one.Seconds > best.Seconds
        ? Invariant($"It would do{With(one.Bands)}, but takes {one.Seconds:0} s where {best.Seconds:0} s are enough.")
        : "It would do just as well; the choice goes by name.";

    private static string With(BandScore? bands) => bands is null ? "" : Invariant($", with bands of {bands.VisibleDeltaL:0.00} L*");

    private static string Word(PrintQuality quality) => quality switch
    {
        PrintQuality.Draft => "Draft",
        PrintQuality.Normal => "Normal",
        _ => "High",
    };

    private sealed record Judged(Mode Mode, double Seconds, string? Cannot, string? Coarse, BandScore? Bands);
}
