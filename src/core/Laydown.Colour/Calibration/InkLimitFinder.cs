using Laydown.Colour.Curves;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>Finds how much of one ink is worth printing, from the turning point of its wedge.</summary>
/// <remarks>
/// The first of: chroma stops rising; hue turns more than 6° from the hue at half the ink; the slope of density falls under 5 % of its
/// first slope; the operator's own limit. Chroma and hue are asked only of inks whose chroma gets 15 above the stock's. Rules and
/// numbers are common practice, no source.
/// </remarks>
public static class InkLimitFinder
{
    /// <summary>Turn of hue that ends an ink, degrees.</summary>
    public const double HueTurnDegrees = 6;

    /// <summary>Share of the first density slope under which an ink ends.</summary>
    public const double SlopeShare = 0.05;

    /// <summary>Chroma above the stock's from which chroma and hue are asked.</summary>
    public const double ColouredFrom = 15;

    /// <summary>Least limit that leaves an ink of use, percent.</summary>
    public const double LeastPercent = 20;

    private const double ChromaNoise = 0.3;

    /// <summary>The limit of one ink.</summary>
    /// <param name="wedge">Its wedge.</param>
    /// <param name="operatorPercent">The operator's physical limit, percent of one full ink, over 0 to 100; 100 for none.</param>
    /// <param name="file">Name of the file for messages.</param>
    public static Reading<FoundLimit> Find(Wedge wedge, double operatorPercent, string file)
    {
        string field = "limit of " + wedge.Ink;
        if (!(operatorPercent is > 0 and <= 100))
            return Reading.Refused<FoundLimit>(new InputFault(file, null, field, Invariant($"{operatorPercent} %"), "over 0 % to 100 %"));

        List<(LimitReason Reason, Figure Limit)> found = [];
        if (wedge.Steps.Max(s => s.Lab.Chroma) - wedge.Paper.Lab.Chroma > ColouredFrom)
        {
            found.Add(Chroma(wedge));
            found.Add(Hue(wedge));
        }

        found.Add(Density(wedge));
        found.Add((LimitReason.Operator, Percent(wedge, operatorPercent, Invariant($"the operator allows {operatorPercent:0.##} %"))));
        (LimitReason Reason, Figure Limit) first = found.MinBy(f => f.Limit.Value);
        if (first.Limit.Value < LeastPercent)
        {
            return Reading.Refused<FoundLimit>(new InputFault(file, null, field,
                Invariant($"{first.Limit.Value:0.#} %: {first.Limit.Because}"),
                    Invariant($"a limit of at least {LeastPercent} %: less leaves no tones")));
        }

        LimitReason reason = first.Limit.Value >= 100 ? LimitReason.None : first.Reason;
        Figure limit = reason == LimitReason.None ? first.Limit with { Because = "colour and density rise up to the full ink" }
            : first.Limit;
        return Reading.Of(new FoundLimit(reason, limit, [.. found.Where(f => f != first).Select(f => f.Limit)]));
    }

    private static (LimitReason Reason, Figure Limit) Chroma(Wedge wedge)
    {
        double best = wedge.Steps.Max(s => s.Lab.Chroma);
        WedgeStep turn = wedge.Steps.First(s => s.Lab.Chroma >= best - ChromaNoise);
        // The top may lie at the last step: then the last but one, within noise of it, is no turn.
        if (wedge.Steps[^1].Lab.Chroma >= best && turn.Ink > 0.9)
            turn = wedge.Solid;
        return (LimitReason.ChromaStopsRising, Percent(wedge, turn.Ink * 100,
            Invariant($"chroma is {turn.Lab.Chroma:0.0} at {turn.Ink * 100:0.##} % and {wedge.Solid.Lab.Chroma:0.0} at 100 %; its highest is {best:0.0}")));
    }

    private static (LimitReason Reason, Figure Limit) Hue(Wedge wedge)
    {
        double[] x = [.. wedge.Steps.Select(s => s.Ink)];
        MonotoneCurve a = new(x, [.. wedge.Steps.Select(s => s.Lab.A)]), b = new(x, [.. wedge.Steps.Select(s => s.Lab.B)]);
        double half = Math.Atan2(b.At(0.5), a.At(0.5));
        int at = 500;
        while (at < 1000 && Math.Abs(Turn(a, b, half, (at + 1) / 1000.0)) <= HueTurnDegrees)
            at++;
        return (LimitReason.HueTurns, Percent(wedge, at / 10.0,
            Invariant($"hue turns {Turn(a, b, half, at / 1000.0):0.0}° from half the ink to {at / 10.0:0.#} % and {Turn(a, b, half, 1):0.0}° to 100 %; {HueTurnDegrees}° allowed")));
    }

    private static double Turn(MonotoneCurve a, MonotoneCurve b, double from, double at)
    {
        double turn = (Math.Atan2(b.At(at), a.At(at)) - from) * 180 / Math.PI;
        return turn - (360 * Math.Round(turn / 360));
    }

    private static (LimitReason Reason, Figure Limit) Density(Wedge wedge)
    {
        Lab paper = wedge.Paper.Lab;
        Lab most = wedge.Steps.MaxBy(s => ToneValues.Distance(paper, s.Lab))!.Lab;
        double[] density = [.. wedge.Steps.Select(s => ToneValues.DensityOver(s.Lab, paper, most))];
        int quarter = Math.Max(1, wedge.Steps.TakeWhile(s => s.Ink <= 0.25 + 1e-6).Count() - 1);
        double first = density[quarter] / wedge.Steps[quarter].Ink;
        int end = quarter;
        double slope = first;
        while (end < density.Length - 1)
        {
            slope = (density[end + 1] - density[end]) / (wedge.Steps[end + 1].Ink - wedge.Steps[end].Ink);
            if (!(slope >= SlopeShare * first))
                break;
            end++;
        }

        return (LimitReason.DensitySlope, Percent(wedge, wedge.Steps[end].Ink * 100,
            Invariant($"density rises by {slope:0.00} for one full ink beyond, by {first:0.00} at first; {SlopeShare * 100} % of that asked")));
    }

    private static Figure Percent(Wedge wedge, double percent, string because) =>
        new("limit of " + wedge.Ink, percent, "%", because, "common practice, no source");
}
