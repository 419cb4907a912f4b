using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Plan.Runs;

/// <summary>Picks the fastest mode that this work can bear, and says why and why not the others.</summary>
/// <remarks>
/// Some limits are hard (print condition, coverage, layers, cure, heat). Others are grades of looks: distance, text, codes, lamp, bands. When no mode keeps the latter,
/// the one with the faintest bands of those that keep all but bands is taken, else the finest of those that keep the hard limits, and that is said. Grades by distance are the shop's own presets: under 1 m, 1 m to 3 m, from 3 m on.
/// A person may take another mode that can print the work; who and why stays with the choice.
/// </remarks>
public static class ModeChooser
{
    /// <summary>Device dots wanted across a stem or line; common practice, no source.</summary>
    public const int DotsPerStem = 3;

    /// <summary>Device dots wanted across one module of a code; common practice, no source.</summary>
    public const int DotsPerModule = 4;

    /// <summary>Picks a mode of <paramref name="press"/>.</summary>
    /// <param name="press">The press.</param>
    /// <param name="condition">The print condition; modes it is not calibrated for are out.</param>
    /// <param name="inkSet">The inks.</param>
    /// <param name="demand">What the mode must bear.</param>
    /// <param name="bands">Figures the bands of a mode; null where nobody does, then bands do not count.</param>
    /// <param name="overrule">The mode a person takes in place of the one picked; null for none.</param>
    /// <returns>The choice, or faults when no mode can print this stack at all, or the one a person takes cannot.</returns>
    public static Reading<ModeChoice> Choose(PressDescription press, PrintCondition condition, InkSet inkSet, ModeDemand demand,
        BandScore.Source? bands = null, ModeOverrule? overrule = null)
    {
        Bounds.Within(demand.ViewingDistanceM, 0.01, 10_000);
        ModeJudge judge = new(press, condition, inkSet, demand, bands);
        List<JudgedMode> all = [.. press.Modes.Select(judge.Of)];
        List<JudgedMode> ranked = [.. Ranked([.. all.Where(j => j.Cannot is null)])];
        if (ranked.Count == 0)
        {
            return Reading.Refused<ModeChoice>([.. all.Select(j => Fault(press, Invariant($"mode {j.Mode.Id}"), (j.Cannot ?? "").TrimEnd('.'), "a mode that can print this stack")),
                .. press.Modes.Count == 0 ? [Fault(press, "modes", "none", "at least one mode")] : Array.Empty<InputFault>()]);
        }

        JudgedMode proposed = ranked[0], taken = proposed;
        if (overrule is not null)
        {
            if (ranked.Find(j => string.Equals(j.Mode.Id, overrule.ModeId, StringComparison.Ordinal)) is not { } wanted)
                return Reading.Refused<ModeChoice>(Fault(press, Invariant($"mode {overrule.ModeId}"), all.Find(j => j.Mode.Id == overrule.ModeId)?.Cannot?.TrimEnd('.') ?? "no such mode", "a mode that can print this stack"));
            taken = wanted;
        }

        int good = ranked.Count(IsGood);
        return Reading.Of(new ModeChoice(taken.Mode.Id,
            [.. taken == proposed ? [] : Overruled(press, overrule!, proposed), .. Reasons(taken, proposed, good, demand, judge)],
            [.. all.Where(j => j != taken).Select(j => new RejectedMode(j.Mode.Id, j.Cannot ?? j.Coarse ?? Banded(j, judge) ?? Slower(j, taken)))])
        {
            Scores = [.. all.Select(j => new ModeScore(j.Mode.Id, j.Seconds, j.Seconds > 0 ? Money.FromUnits(press.Costs.PerHour.Units * (decimal)(j.Seconds / 3600)) : null, j.Points))],
            RunnerUpId = ranked.Find(j => j != taken)?.Mode.Id,
            ProposedId = taken == proposed ? null : proposed.Mode.Id,
            Overrule = taken == proposed ? null : overrule,
        });
    }

    /// <summary>Coarsest grade that bears being looked at from <paramref name="distanceM"/>; the shop's own presets.</summary>
    /// <remarks>Lit from behind, thin spots and bands shine through, so one grade finer is taken; common practice, no source.</remarks>
    public static PrintQuality GradeFor(double distanceM, bool lit = false)
    {
        PrintQuality grade = distanceM < 1 ? PrintQuality.High : distanceM < 3 ? PrintQuality.Normal : PrintQuality.Draft;
        return lit && grade < PrintQuality.High ? grade + 1 : grade;
    }

    /// <summary>The grade in a word.</summary>
    internal static string Word(PrintQuality quality) => quality switch
    {
        PrintQuality.Draft => "Draft",
        PrintQuality.Normal => "Normal",
        _ => "High",
    };

    private static bool IsGood(JudgedMode one) => one.Coarse is null && one.Bands is not { IsBorne: false };

    // Those that keep every wish, fastest first; then those that keep all but bands, faintest bands first; then the rest, finest first.
    private static IEnumerable<JudgedMode> Ranked(IReadOnlyList<JudgedMode> able) =>
    [
        .. able.Where(IsGood).OrderBy(j => j.Seconds).ThenBy(j => j.Mode.Id, StringComparer.Ordinal),
        .. able.Where(j => j.Coarse is null && !IsGood(j)).OrderBy(j => j.Bands?.VisibleDeltaL ?? 0).ThenBy(j => j.Seconds).ThenBy(j => j.Mode.Id, StringComparer.Ordinal),
        .. able.Where(j => j.Coarse is not null).OrderByDescending(j => j.Mode.Quality).ThenByDescending(j => j.Mode.ScanDpi * j.Mode.FeedDpi).ThenByDescending(j => j.Mode.Passes),
    ];

    private static IEnumerable<string> Overruled(PressDescription press, ModeOverrule overrule, JudgedMode proposed) =>
        [Invariant($"Taken by {overrule.By} in place of {press.FindMode(proposed.Mode.Id)?.Name ?? proposed.Mode.Id}: {overrule.Reason.Trim().TrimEnd('.')}.")];

    private static List<string> Reasons(JudgedMode taken, JudgedMode proposed, int good, ModeDemand demand, ModeJudge judge)
    {
        List<string> reasons = [];
        if (taken == proposed)
        {
            reasons.Add(good > 0
                ? Invariant($"Fastest of {good} mode(s) that bear this work: {taken.Seconds:0} s for {demand.Sheet} with {demand.Stack.Layers.Count} layer(s).")
                : taken.Coarse is null
                ? Invariant($"No mode keeps every wish; this one has the faintest bands. {Banded(taken, judge)} Show the customer a printed proof.")
                : Invariant($"No mode keeps every wish; this is the finest that can print it. {taken.Coarse} Show the customer a printed proof."));
        }
        else if ((taken.Coarse ?? Banded(taken, judge)) is { } against)
        {
            reasons.Add(Invariant($"Against it: {against} Show the customer a printed proof."));
        }

        if (taken.Late is { } late)
            reasons.Add(Invariant($"Late: {late} Take a coarser mode, another press or another date."));
        reasons.Add(Invariant($"Looked at from {demand.ViewingDistanceM:0.##} m{(demand.Stack.Lit ? ", lit from behind" : "")}: {Word(GradeFor(demand.ViewingDistanceM, demand.Stack.Lit)).ToLowerInvariant()} or finer; it is {Word(taken.Mode.Quality).ToLowerInvariant()}, {taken.Mode.ScanDpi} × {taken.Mode.FeedDpi} dpi in {taken.Mode.Passes} passes."));
        reasons.AddRange(taken.Points.Where(p => p.Standing == ModeStanding.Borne && p.About is "fine text" or "codes" or "solids and tints" or "skin tones").Select(p => p.Said));
        return reasons;
    }

    private static string? Banded(JudgedMode one, ModeJudge judge) => one.Bands is { IsBorne: false } bands ? judge.Bands(bands) : null;

    private static string Slower(JudgedMode one, JudgedMode best) => one.Seconds > best.Seconds
        ? Invariant($"It would do{With(one.Bands)}, but takes {one.Seconds:0} s where {best.Seconds:0} s are enough.")
        : one.Seconds < best.Seconds ? Invariant($"It would do{With(one.Bands)}, in {one.Seconds:0} s.") : "It would do just as well; the choice goes by name.";

    private static string With(BandScore? bands) => bands is null ? "" : Invariant($", with bands of {bands.VisibleDeltaL:0.00} L*");

    private static InputFault Fault(PressDescription press, string field, string found, string wanted) => new(Invariant($"press {press.Id}"), null, field, found, wanted);
}
