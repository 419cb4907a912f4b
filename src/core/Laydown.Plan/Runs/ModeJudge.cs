using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Cure;
using Laydown.Press.Heat;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Judges one mode by all that counts for a piece of work.</summary>
/// <param name="press">The press.</param>
/// <param name="condition">The print condition.</param>
/// <param name="inkSet">The inks.</param>
/// <param name="demand">What the mode must bear.</param>
/// <param name="bands">Figures the bands of a mode; null where nobody does.</param>
internal sealed class ModeJudge(PressDescription press, PrintCondition condition, InkSet inkSet, ModeDemand demand, BandScore.Source? bands)
{
    /// <summary>Resolution of the eye at 1 m, 1 minute of arc: 3438 / 39.37 inches, ppi.</summary>
    private const double EyePpiAt1M = 87.3;

    /// <summary>Stem of a plain letter as a share of its size: capitals about 0.7 of the size, stem a seventh of that; from memory.</summary>
    public const double StemPerSize = 0.1;

    /// <summary>Tone by which smoothness is judged, share of the full laydown: own rule.</summary>
    public const double LightTone = 0.1;

    /// <summary>Distance of dots from which light tones look grainy, minutes of arc: 30 cycles a degree, about the end of what the eye sees of faint contrast; own rule.</summary>
    public const double GrainMinutes = 2;

    /// <summary>A minute of arc at 1 m, mm.</summary>
    private const double MmPerMinuteAt1M = 0.2909;

    /// <summary>Judges a mode.</summary>
    public JudgedMode Of(Mode mode)
    {
        List<ModePoint> points = [];
        JudgedMode Ended(double seconds = 0, BandScore? score = null) => new(mode, seconds, points, score);

        // What it cannot do at all comes first, and ends it: the rest would be said of nothing.
        bool calibrated = condition.ModeIds.Contains(mode.Id, StringComparer.Ordinal);
        points.Add(Point("print condition", calibrated ? null : ModeStanding.Out, calibrated ? Invariant($"{condition.Id} is calibrated for it.") : Invariant($"Print condition {condition.Id} is not calibrated for it.")));
        if (!calibrated)
            return Ended();
        double seconds = 0;
        foreach (int layers in demand.LayersByFace)
        {
            Reading<ScanPlan> scan = Scanning.Of(press, mode, demand.Sheet.WidthMm, demand.Sheet.HeightMm, layers);
            if (!scan.IsTaken)
            {
                points.Add(Point("rows and layers", ModeStanding.Out, scan.Faults[0].ToString()));
                return Ended();
            }

            seconds += scan.Value.Seconds;
        }

        points.Add(Point("rows and layers", null, Invariant($"Every row is met {mode.Passes} times, {demand.Stack.Layers.Count} layer(s) in one go.")));
        points.Add(Cure(mode));
        if (Heat(mode) is { } heat)
            points.Add(heat);
        if (InkLoad(mode) is { } load)
            points.Add(load);
        points.AddRange(Looks(mode));
        if (SkinTones(mode) is { } tones)
            points.Add(tones);

        // Bands take longest to figure, so only modes that are not out already are asked.
        BandScore? score = points.TrueForAll(p => p.Standing == ModeStanding.Borne) ? bands?.Invoke(press, mode, demand) : null;
        if (DueDate(seconds) is { } due)
            points.Add(due);
        if (score is not null)
            points.Add(Point("solids and tints", score.IsBorne ? null : ModeStanding.Coarse, Bands(score)));
        return Ended(seconds, score);
    }

    /// <summary>Bands in a sentence.</summary>
    public string Bands(BandScore bands) => bands.IsBorne
        ? Invariant($"Bands: at most {bands.VisibleDeltaL:0.00} L* is seen of them from {demand.ViewingDistanceM:0.##} m, mostly by {bands.Because}; {bands.MostDeltaL:0.0} L* is borne.")
        : Invariant($"Bands of {bands.VisibleDeltaL:0.00} L* would be seen from {demand.ViewingDistanceM:0.##} m, mostly by {bands.Because}; {bands.MostDeltaL:0.0} L* is borne.");

    private ModePoint Cure(Mode mode)
    {
        double dose = Dose.OfLastLayer(press.Lamp, mode).Value;
        double wanted = demand.Stack.Layers.SelectMany(l => LayerRoles.Of(l.Group)).Distinct()
            .Select(inkSet.Find).OfType<Ink>().Select(i => i.DoseMjPerCm2).DefaultIfEmpty(0).Max();
        return dose + 1e-9 < wanted
            ? Point("cure", ModeStanding.Out, Invariant($"It cures with {dose:0} mJ/cm²; the inks want {wanted:0}."))
            : Point("cure", null, Invariant($"{dose:0} mJ/cm² where the inks want {wanted:0}."));
    }

    private ModePoint? Heat(Mode mode)
    {
        if (demand.Stock is not { } stock)
            return null;
        double inkUm = InkVolume.FullMlPerM2(mode) * demand.MaxInk;
        double Warm(Stock one) => SheetWarmths.RoomC + SheetWarmths.Of(press, mode, one, demand.LayersByFace.DefaultIfEmpty(1).Max(), inkUm, demand.Sheet.WidthMm).RiseK;

        // The one that comes nearest to what it bears speaks for all.
        stock = demand.Beside.Append(stock).MaxBy(s => Warm(s) - s.MaxTemperatureC)!;
        double warm = Warm(stock);
        return warm > stock.MaxTemperatureC
            ? Point("heat", ModeStanding.Out, Invariant($"{stock.Name} may reach {warm:0} °C under its lamps; it bears {stock.MaxTemperatureC:0} °C."))
            : Point("heat", null, Invariant($"{stock.Name} reaches at most {warm:0} °C of the {stock.MaxTemperatureC:0} °C it bears."));
    }

    // How much ink stands on one spot: thick films curl the sheet, crack at the router and let go of what holds ink badly.
    private ModePoint? InkLoad(Mode mode)
    {
        if (demand.Stock is not { } stock || demand.MaxInk <= 0)
            return null;
        double film = InkVolume.FullMlPerM2(mode) * demand.MaxInk;
        stock = demand.Beside.Append(stock).MinBy(s => s.MaxInkMlPerM2 ?? double.MaxValue)!;
        return stock.MaxInkMlPerM2 is not { } most
            ? Point("ink load", null, Invariant($"Up to {film:0.0} ml/m² of ink on one spot; nobody wrote down what {stock.Name} bears, so the tape test on the first piece tells."))
            : film > most
            ? Point("ink load", ModeStanding.Coarse, Invariant($"It lays up to {film:0.0} ml/m² of ink on one spot; {stock.Name} bears {most:0.#} before it curls, cracks or peels."))
            : Point("ink load", null, Invariant($"Up to {film:0.0} ml/m² of ink on one spot, of the {most:0.#} that {stock.Name} bears."));
    }

    // Light smooth tones are made of single dots of the lightest ink in the smallest drop: where they stand too far apart the eye sees grain.
    private ModePoint? SkinTones(Mode mode)
    {
        if (demand.Stack.Layers.All(l => l.Group != InkGroup.Colour))
            return null;
        InkRole[] able = [.. press.Channels.Select(c => c.Role).Where(r => r is InkRole.Magenta or InkRole.LightMagenta)];
        double strength = able.Select(inkSet.Find).OfType<Ink>().Select(i => i.Strength).Where(s => s > 0).DefaultIfEmpty(1).Min();
        double share = Math.Min(1, LightTone / strength * mode.DropsPl[^1] / mode.DropsPl[0]);
        double apartMm = 25.4 / Math.Sqrt((double)mode.ScanDpi * mode.FeedDpi * share), minutes = apartMm / (MmPerMinuteAt1M * demand.ViewingDistanceM);
        string said = Invariant($"Dots of a tenth of tone stand {apartMm:0.00} mm apart, {minutes:0.0}' to the eye at {demand.ViewingDistanceM:0.##} m");
        return minutes > GrainMinutes
            ? Point("skin tones", ModeStanding.Coarse, Invariant($"{said}: over {GrainMinutes:0}' light tones look grainy."))
            : Point("skin tones", null, Invariant($"{said}; grain is seen from {GrainMinutes:0}' on."));
    }

    // The date never turns a mode away: the fastest that bears the work is taken anyway. It says where that is not fast enough.
    private ModePoint? DueDate(double seconds)
    {
        if (demand.MinutesLeft is not { } left)
            return null;
        double minutes = (press.Costs.SetUpMinutes * demand.LayersByFace.Count) + (seconds * demand.Sheets / 60);
        return minutes > left
            ? Point("due date", ModeStanding.Coarse, Invariant($"It takes {minutes:0} min; {press.Name} is worked {left:0} min until it is due."))
            : Point("due date", null, Invariant($"{minutes:0} min of the {left:0} min {press.Name} is worked until it is due."));
    }

    private IEnumerable<ModePoint> Looks(Mode mode)
    {
        double distance = demand.ViewingDistanceM;
        int dpi = Math.Min(mode.ScanDpi, mode.FeedDpi);
        double pitchMm = 25.4 / dpi;
        PrintQuality grade = ModeChooser.GradeFor(distance, demand.Stack.Lit);
        string lit = demand.Stack.Lit ? " lit from behind" : "";
        yield return mode.Quality < grade
            ? Point("grade", ModeStanding.Coarse, Invariant($"{ModeChooser.Word(mode.Quality)} is coarser than {ModeChooser.Word(grade).ToLowerInvariant()}, the shop's grade for {distance:0.##} m{lit}."))
            : Point("grade", null, Invariant($"{ModeChooser.Word(mode.Quality)}, where {distance:0.##} m{lit} want {ModeChooser.Word(grade).ToLowerInvariant()}."));
        double eyePpi = 2 * EyePpiAt1M / distance;
        yield return dpi < eyePpi
            ? Point("detail", ModeStanding.Coarse, Invariant($"{dpi} dpi is under twice what the eye resolves at {distance:0.##} m ({eyePpi:0} ppi)."))
            : Point("detail", null, Invariant($"{dpi} dpi, where twice what the eye resolves at {distance:0.##} m is {eyePpi:0} ppi."));
        if (demand.SmallestTextPt is { } points)
        {
            double dots = points * 25.4 / 72 * StemPerSize / pitchMm;
            yield return dots < ModeChooser.DotsPerStem
                ? Point("fine text", ModeStanding.Coarse, Invariant($"Text of {points:0.#} pt has stems of {dots:0.0} dots; wanted {ModeChooser.DotsPerStem}."))
                : Point("fine text", null, Invariant($"Smallest text {points:0.#} pt: stems of {dots:0.0} dots."));
        }

        if (demand.SmallestModuleMm is { } module)
        {
            yield return module < (ModeChooser.DotsPerModule - 0.01) * pitchMm
                ? Point("codes", ModeStanding.Coarse, Invariant($"A code with modules of {module:0.00} mm has {module / pitchMm:0.0} dots to a module; wanted {ModeChooser.DotsPerModule}."))
                : Point("codes", null, Invariant($"Narrowest code module {module:0.00} mm: {module / pitchMm:0.0} dots."));
        }
    }

    private static ModePoint Point(string about, ModeStanding? standing, string said) => new(about, standing ?? ModeStanding.Borne, said);
}
