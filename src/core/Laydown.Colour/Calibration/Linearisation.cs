using Laydown.Colour.Curves;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>Makes the curve that prints an ink in even steps.</summary>
/// <remarks>
/// Tone values of the wedge are made to rise by <see cref="IsotonicSteps"/>, joined by a <see cref="MonotoneCurve"/> and inverted.
/// The curve rises strictly and has no step in slope. <see cref="InkLinearisation.Roughness"/> tells its largest second difference: read
/// in 21 steps it is held within a quarter, and 0.5 % more, of that of the same press read in 401.
/// </remarks>
public static class Linearisation
{
    /// <summary>Values of a curve unless asked otherwise: every 3.125 %.</summary>
    public const int UsualValues = 33;

    /// <summary>The curve of one ink.</summary>
    /// <param name="wedge">Its wedge.</param>
    /// <param name="aim">What steps are to be even in.</param>
    /// <param name="limitPercent">Ink at full tone, percent of one full ink, over 0 to 100.</param>
    /// <param name="file">Name of the file for messages.</param>
    /// <param name="values">Values of the curve, 2 to 1025.</param>
    /// <returns>The curve, or a fault that names ink and step where the wedge falls by more than noise or the limit leaves too
    /// little.</returns>
    public static Reading<InkLinearisation> Make(
        Wedge wedge, LinearisationAim aim, double limitPercent, string file, int values = UsualValues)
    {
        Bounds.Within(values, 2, 1025);
        string field = "wedge of " + wedge.Ink;
        if (!(limitPercent is > 0 and <= 100))
            return Refused(file, field, Invariant($"a limit of {limitPercent} %"), "over 0 % to 100 %");
        WedgeStep[] steps = Upto(wedge, limitPercent / 100);
        if (steps.Length < 3)
            return Refused(file, field, Invariant($"{steps.Length} steps up to the limit of {limitPercent:0.##} %"),
                "at least 3 with the bare stock");

        double[] tones = ToneValues.Of(steps, aim);
        double whole = ToneValues.Distance(steps[0].Lab, steps[^1].Lab);
        if (!(whole > 2) || tones.Any(t => !double.IsFinite(t)))
            return Refused(file, field, "a limit at which the ink looks like the bare stock", "an ink that can be seen");
        if (Fall(file, field, steps, tones) is { } fault)
            return Reading.Refused<InkLinearisation>(fault);
        return Reading.Of(Inverted(wedge.Ink, aim, limitPercent, steps, tones, values));
    }

    /// <summary>Tone values that a curve gives on a press that still prints as its wedge did: what the operator may expect,
    /// percent.</summary>
    /// <param name="wedge">The wedge.</param>
    /// <param name="made">The linearisation.</param>
    /// <param name="wantedPercent">Tone wanted, 0 to 100.</param>
    public static double ToneAfter(Wedge wedge, InkLinearisation made, double wantedPercent)
    {
        WedgeStep[] steps = Upto(wedge, made.LimitPercent / 100);
        MonotoneCurve tone = Forward(steps, ToneValues.Of(steps, made.Aim), out _);
        double at = Bounds.Within(wantedPercent, 0, 100) / 100 * (made.Curve.Count - 1);
        int k = Math.Min((int)at, made.Curve.Count - 2);
        double sent = made.Curve[k] + ((at - k) * (made.Curve[k + 1] - made.Curve[k]));
        return tone.At(sent / 100 * made.LimitPercent / 100);
    }

    // Steps under the limit, and the limit itself between its neighbours.
    private static WedgeStep[] Upto(Wedge wedge, double limit)
    {
        List<WedgeStep> steps = [.. wedge.Steps.TakeWhile(s => s.Ink < limit - 1e-6)];
        double[] x = [.. wedge.Steps.Select(s => s.Ink)];
        Lab end = new(Between(x, wedge.Steps.Select(s => s.Lab.L), limit), Between(x, wedge.Steps.Select(s => s.Lab.A), limit),
            Between(x, wedge.Steps.Select(s => s.Lab.B), limit));
        steps.Add(new(limit, end, wedge.Steps[Math.Min(steps.Count, wedge.Steps.Count - 1)].Reads));
        return [.. steps];
    }

    private static double Between(double[] x, IEnumerable<double> y, double at) => new MonotoneCurve(x, [.. y]).At(at);

    private static InputFault? Fall(string file, string field, WedgeStep[] steps, double[] tones)
    {
        double top = 0;
        for (int i = 1; i < steps.Length; i++)
        {
            if (tones[i] < top - ToneValues.NoisePercent)
            {
                return new(file, null, field,
                    Invariant($"tone {tones[i]:0.0} % at step {steps[i].Ink * 100:0.##} % after {top:0.0} % before it"),
                    Invariant($"tones that rise up to the limit, to {ToneValues.NoisePercent} %: lower the limit or read again"));
            }

            top = Math.Max(top, tones[i]);
        }

        return null;
    }

    // Pools become one point in their middle; stock and limit keep their places, so that the curve runs from 0 to 100.
    private static MonotoneCurve Forward(WedgeStep[] steps, double[] tones, out double largestPool)
    {
        var pools = IsotonicSteps.Pools(tones, [.. steps.Select((s, i) => i == 0 || i == steps.Length - 1 ? 1e9 : (double)s.Reads)]);
        largestPool = pools.Max(p => Enumerable.Range(p.First, p.Last - p.First + 1).Max(i => Math.Abs(tones[i] - p.Value)));
        double[] x = [.. pools.Select(p => p.First == 0 ? 0 : p.Last == steps.Length - 1 ? steps[^1].Ink
            : steps.Skip(p.First).Take(p.Last - p.First + 1).Average(s => s.Ink))];
        double[] y = [.. pools.Select(p => p.First == 0 ? 0 : p.Last == steps.Length - 1 ? 100 : Math.Clamp(p.Value, 0, 100))];
        return new(x, y);
    }

    private static InkLinearisation Inverted(
        string ink, LinearisationAim aim, double limitPercent, WedgeStep[] steps, double[] tones, int values)
    {
        MonotoneCurve tone = Forward(steps, tones, out double pool);
        double[] curve = new double[values];
        for (int i = 1; i < values - 1; i++)
            curve[i] = tone.Inverse(100.0 * i / (values - 1)) / steps[^1].Ink * 100;
        curve[^1] = 100;
        double rough = 0;
        for (int i = 1; i < values - 1; i++)
            rough = Math.Max(rough, Math.Abs(curve[i - 1] - (2 * curve[i]) + curve[i + 1]));
        return new(ink, aim, limitPercent, curve, pool, rough);
    }

    private static Reading<InkLinearisation> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<InkLinearisation>(new InputFault(file, null, field, found, wanted));
}
