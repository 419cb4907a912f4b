using System.Text;
using System.Text.Json;
using Laydown.Colour.Curves;
using Laydown.Colour.Fits;
using Laydown.Colour.Readings;
using Laydown.Measures;
using Laydown.Optics.Fits;
using Laydown.Press.Inks;

namespace Laydown.Shop.Colour;

/// <summary>Fitted inks as the record that the shop keeps.</summary>
internal static class InkOpticsRecord
{
    private const int CurveSteps = 20;

    /// <summary>The record, or which ink belongs to no set.</summary>
    /// <param name="fitted">The fit.</param>
    /// <param name="inks">The ink set, or null without a shop.</param>
    /// <param name="readings">Name of the readings.</param>
    /// <param name="day">Day of the fit.</param>
    /// <param name="findings">What is doubtful.</param>
    internal static Reading<InkOptics> Of(FittedOptics fitted, InkSet? inks, string readings, DateOnly day, IReadOnlyList<Finding> findings)
    {
        string[] strange = [.. fitted.Inks.Select(i => i.Ink).Where(n => InkRoleNames.Find(n) is not { } role || inks?.Find(role) is null && inks is not null)];
        if (strange.Length > 0)
        {
            return Reading.Refused<InkOptics>(new InputFault(
                readings, null, "inks", string.Join(", ", strange),
                "inks of the set: " + string.Join(", ", inks is null ? Enum.GetValues<InkRole>().Select(InkRoleNames.Of) : inks.Inks.Select(i => InkRoleNames.Of(i.Role)))));
        }

        OpticsFit fit = FitOf(fitted, readings.Length > 1000 ? readings[..1000] : readings, day, findings);
        InkLight[] lights = [.. fitted.Inks.Select(LightOf).OrderBy(l => l.Role)];
        string set = inks?.Id ?? "inks", mark = ConditionShelf.Mark(JsonSerializer.SerializeToUtf8Bytes(lights),
            Encoding.UTF8.GetBytes(readings));
        return Reading.Of(new InkOptics(
            Invariant($"{set}-{mark}"), Invariant($"{inks?.Name ?? "Inks"}, read {day:yyyy-MM-dd}"), inks?.Invented ?? false, set, lights, fit));
    }

    private static InkLight LightOf(FittedInk ink)
    {
        OpticsOrigin from = (ink.OverBlack > 0, ink.OverWhite > 0, ink.Through > 0) switch
        {
            (true, true, true) => OpticsOrigin.OverBothAndThrough,
            (true, true, false) => OpticsOrigin.OverBlackAndWhite,
            (true, false, true) => OpticsOrigin.OverBlackAndThrough,
            (false, true, true) => OpticsOrigin.OverWhiteAndThrough,
            (false, false, true) => OpticsOrigin.Through,
            _ => OpticsOrigin.OverOne,
        };
        return new(
            InkRoleNames.Find(ink.Ink)!.Value, Rounded(ink.Absorption), Rounded(ink.Scatter), from, from, CurveOf(ink), Rounded(ink.AbsorptionError), Rounded(ink.ScatterError));
    }

    private static double[] Rounded(IReadOnlyList<double> values) => [.. values.Select(v => Math.Round(double.IsFinite(v) ? v : InkOpticsFaults.Most, 6))];

    private static double[] CurveOf(FittedInk ink)
    {
        MonotoneCurve curve = new(ink.Asked, ink.Acting);
        return [.. Enumerable.Range(0, CurveSteps + 1).Select(i => Math.Round(Math.Clamp(100 * curve.At(i / (double)CurveSteps), 0, 100), 4))];
    }

    private static OpticsFit FitOf(FittedOptics fitted, string readings, DateOnly day, IReadOnlyList<Finding> findings)
    {
        ResidualSummary colour = ResidualSummary.Of(fitted.Residuals.Select(r => r.DeltaE));
        double[] through = [.. fitted.Residuals.Where(r => r.Behind == Behind.Lamp).Select(r => 100 * Math.Abs(r.DeltaY))];
        ResidualSummary light = ResidualSummary.Of(through.Length == 0 ? [0] : through);
        return new(
            readings, day, Four(colour.Mean), Four(colour.P95), Four(colour.Max), Four(light.Mean), Four(light.P95), Four(light.Max),
            [.. fitted.Residuals.Select(r => new OpticsResidual(r.Id, r.Build.Words(), BehindWords.Way(r.Behind), Four(r.DeltaE), Four(100 * r.DeltaY)))],
            [.. findings.Select(f => Invariant($"{f.What} Found {f.Measured}; wanted {f.Wanted}."))]);
    }

    private static double Four(double value) => Math.Round(value, 4);
}
