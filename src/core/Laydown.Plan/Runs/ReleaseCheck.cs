using Laydown.Measures;
using Laydown.Press;
using Laydown.Press.HoldDown;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Holds what was measured against the plan before a run is let go.</summary>
/// <remarks>
/// The head height follows the highest measured point, never the thickness that was ordered. A sheet outside the tolerance of its stock, either way, is
/// another sheet than the plan reckoned with and is refused. Own rules, on the safe side.
/// </remarks>
public static class ReleaseCheck
{
    /// <summary>What two people may differ by at the highest point, mm; own rule, the step of a plain calliper twice.</summary>
    public const double AgreeMm = 0.1;

    /// <summary>Points to measure: five on a board or blank, three across a roll; common practice, no source.</summary>
    public static int PointsOf(StockKind kind) => kind == StockKind.Roll ? 3 : 5;

    /// <summary>The release, or every reason against it: values that cannot be, people missing, a sheet that is not the plan's, edges too high, refusals of the set-up.</summary>
    /// <param name="run">The run.</param>
    /// <param name="press">Its press, tanks as last read.</param>
    /// <param name="stock">Its stock.</param>
    /// <param name="measured">What was measured.</param>
    public static Reading<RunRelease> Of(Run run, PressDescription press, Stock stock, MeasuredSheet measured)
    {
        List<InputFault> faults = [.. Values(run, stock, measured), .. People(run, measured)];
        if (faults.Count > 0)
            return Reading.Refused<RunRelease>(faults);

        double thickest = Math.Max(measured.ThicknessMm.Max(), measured.CheckedHighestMm);
        double planned = run.SetUp.HighestPointMm - stock.ThicknessMm - stock.ThicknessToleranceMm;
        double added = Math.Max(planned, measured.EdgeLiftMm + run.SetUp.InkMm);
        double highest = thickest + Math.Max(0, added), head = SheetHeights.HeadHeightMm(highest);
        faults.AddRange([.. Sheet(run, press, stock, measured, thickest, highest, head)]);
        return faults.Count > 0 ? Reading.Refused<RunRelease>(faults) : Reading.Of(new RunRelease(measured, thickest, highest, HeadGap.FromMm(head),
        [
            new("highest point measured", highest, "mm",
                Invariant($"thickest of {measured.ThicknessMm.Count + 1} readings {thickest:0.00} + {Math.Max(0, added):0.00} mm for edges and ink"), FigureSource.OwnRule),
            new("head height over the belt", head, "mm",
                Invariant($"highest point {highest:0.00} + clearance {SheetHeights.ClearanceMm} mm, rounded up to {SheetHeights.SetStepMm} mm"), FigureSource.OwnRule),
        ]));
    }

    private static IEnumerable<InputFault> Values(Run run, Stock stock, MeasuredSheet measured)
    {
        int points = PointsOf(stock.Kind);
        if (measured.ThicknessMm.Count != points)
            yield return Fault(run, "thicknessMm", Invariant($"{measured.ThicknessMm.Count} readings"), stock.Kind == StockKind.Roll ? "three readings across the roll" : "five readings: four corners and the middle");
        foreach (double mm in measured.ThicknessMm.Append(measured.CheckedHighestMm).Where(mm => mm is not (> 0 and <= 200)))
            yield return Fault(run, "thicknessMm", Invariant($"{mm} mm"), "over 0 mm to 200 mm");
        if (measured.EdgeLiftMm is not (>= 0 and <= 100))
            yield return Fault(run, "edgeLiftMm", double.IsNaN(measured.EdgeLiftMm) ? "nothing measured" : Invariant($"{measured.EdgeLiftMm} mm"), "0 mm to 100 mm; 0 only where all edges lie flat");
    }

    private static IEnumerable<InputFault> People(Run run, MeasuredSheet measured)
    {
        string one = measured.MeasuredBy.Trim(), other = measured.CheckedBy.Trim();
        if (one.Length is 0 or > 100)
            yield return Fault(run, "measuredBy", one.Length == 0 ? "nobody" : "a long name", "the name of who measured, at most 100 letters");
        if (other.Length is 0 or > 100)
            yield return Fault(run, "checkedBy", other.Length == 0 ? "nobody" : "a long name", "the name of who checked, at most 100 letters");
        else if (string.Equals(one, other, StringComparison.OrdinalIgnoreCase))
            yield return Fault(run, "checkedBy", one + " again", "a second person");
    }

    private static IEnumerable<InputFault> Sheet(
        Run run, PressDescription press, Stock stock, MeasuredSheet measured, double thickest, double highest, double headMm)
    {
        foreach (string refusal in InkSupply.RefusalsNow(run, press))
            yield return Fault(run, "setUp", refusal.TrimEnd('.'), "a set-up without refusals");
        double least = stock.ThicknessMm - stock.ThicknessToleranceMm, most = stock.ThicknessMm + stock.ThicknessToleranceMm;
        string wanted = Invariant($"{stock.Name}, {least:0.##} mm to {most:0.##} mm; measure again, then change the sheet, or correct the stock and plan anew");
        foreach (double mm in measured.ThicknessMm.Where(mm => mm < least - 1e-9 || mm > most + 1e-9))
            yield return Fault(run, "thicknessMm", Invariant($"{mm:0.00} mm"), wanted);
        if (Math.Abs(measured.ThicknessMm.Max() - measured.CheckedHighestMm) > AgreeMm + 1e-9)
            yield return Fault(run, "checkedHighestMm", Invariant($"{measured.CheckedHighestMm:0.00} mm where {measured.ThicknessMm.Max():0.00} mm was measured first"), Invariant($"two readings within {AgreeMm} mm; measure again, both of you"));
        if (measured.EdgeLiftMm > SheetHeights.ClearanceMm - SheetHeights.LeftOverLiftMm)
            yield return Fault(run, "edgeLiftMm", Invariant($"{measured.EdgeLiftMm:0.0} mm"), Invariant($"at most {SheetHeights.ClearanceMm - SheetHeights.LeftOverLiftMm:0.0} mm: flatten, tape down or change the sheet"));
        if (run.SetUp.ToBeSeen.Count > 0 && !measured.Seen)
            yield return Fault(run, "seen", "not seen yet", string.Join(" ", run.SetUp.ToBeSeen).TrimEnd('.'));
        if (highest > press.MaxThicknessMm || headMm > 30)
            yield return Fault(run, "thicknessMm", Invariant($"a highest point of {highest:0.00} mm"), Invariant($"at most {Math.Min(press.MaxThicknessMm, 30 - SheetHeights.ClearanceMm):0.#} mm under the heads of {press.Name}"));
    }

    private static InputFault Fault(Run run, string field, string found, string wanted) => new(Invariant($"run {run.Id}"), null, field, found, wanted);
}
