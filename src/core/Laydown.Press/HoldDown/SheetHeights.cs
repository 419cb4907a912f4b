using Laydown.Measures;
using Laydown.Press.Heat;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Press.HoldDown;

/// <summary>The gap rule: where the highest point of a sheet lies and whether the heads clear it.</summary>
/// <remarks>
/// Three curvatures bend a sheet: its bow, ink that shrinks (edges up) and a warmer upper side. Highest point = thickness + its tolerance + ink + the higher of two: the edge lift of the bow under
/// own weight (air leaks in under a lifted strip, so the vacuum is not counted on) and the hump of a dome bent by bow and heat, whose edges seal, so that the vacuum acts: where
/// the vacuum does not bring the middle of the plate down, what is left of its height.
/// Refused when the edge lift of the bow exceeds the clearance less 0.5 mm. The sum of all three under own weight bounds what the run can add; the shrinkage behind it is measured by nobody,
/// so where that bound is over the limit nothing is refused, but someone must see that the edges lie flat before the run is let go. Own rule, on the safe side.
/// </remarks>
public static class SheetHeights
{
    /// <summary>Free height wanted over the highest point, mm; common practice, no source (1.0 mm to 1.5 mm).</summary>
    public const double ClearanceMm = 1.5;

    /// <summary>What must be left of the clearance over a lifted edge, mm.</summary>
    public const double LeftOverLiftMm = 0.5;

    /// <summary>Step in which the head height is set, mm; the height is rounded up to it, so that no reader can round it down.</summary>
    public const double SetStepMm = 0.1;

    private const double GravityMPerS2 = 9.81;
    private const double MostLiftMm = ClearanceMm - LeftOverLiftMm;

    /// <summary>Works out the highest point.</summary>
    /// <param name="press">The press.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="inkUm">Ink on the sheet where it is highest, µm.</param>
    /// <param name="meanInkUm">Ink of one face spread evenly over the sheet, µm: it bends the sheet; null to take the highest.</param>
    /// <param name="differenceK">Difference of temperature from upper to lower side under the lamps, K, not negative.</param>
    public static SheetHeight Of(PressDescription press, Stock stock, double inkUm, double? meanInkUm = null, double differenceK = SheetWarmths.DifferenceTakenK)
    {
        Bent bent = Bent.Of(press, stock, Bounds.Within(meanInkUm ?? inkUm, 0, 10_000), Bounds.Within(differenceK, 0, 1000));
        double inkMm = inkUm / 1000;
        double highest = stock.ThicknessMm + stock.ThicknessToleranceMm + Math.Max(bent.ByWeight.LiftMm, bent.DomeMm) + inkMm;
        return new(highest, bent.ByWeight.LiftMm, bent.Sucked.LiftMm, bent.Heated.LiftMm, inkMm, HeadHeightMm(highest),
            Refusals(press, stock, bent, highest), [.. Figures(press, stock, bent, differenceK, inkMm, highest)])
        {
            BoundMm = bent.All.LiftMm,
            HumpMm = bent.DomeMm,
            ToBeSeen = [.. ToBeSeen(bent)],
        };
    }

    /// <summary>Head height over the belt for a highest point, mm: clearance added, then rounded up to the next step.</summary>
    /// <param name="highestMm">Highest point over the belt, mm.</param>
    public static double HeadHeightMm(double highestMm) =>
        Math.Round(Math.Ceiling(((highestMm + ClearanceMm) / SetStepMm) - 1e-9) * SetStepMm, 1);

    private static List<string> Refusals(PressDescription press, Stock stock, Bent bent, double highestMm)
    {
        List<string> refusals = [];
        if (bent.ByWeight.LiftMm > MostLiftMm)
            refusals.Add(Invariant($"An edge of {stock.Name} may stand {bent.ByWeight.LiftMm:0.0} mm high under its own weight; at most {MostLiftMm:0.0} mm is let under the heads. Flatten, tape down or change the sheet."));
        if (highestMm > press.MaxThicknessMm)
            refusals.Add(Invariant($"The highest point may reach {highestMm:0.0} mm; {press.Name} clears {press.MaxThicknessMm:0.#} mm."));
        return refusals;
    }

    private static IEnumerable<string> ToBeSeen(Bent bent)
    {
        if (bent.All.LiftMm <= MostLiftMm)
            yield break;
        string held = bent.Heated.LiftMm <= MostLiftMm
            ? Invariant($"{bent.Heated.LiftMm:0.0} mm where the vacuum reaches")
            : Invariant($"{bent.Heated.LiftMm:0.0} mm even where the vacuum reaches, so tape all edges down first");
        yield return Invariant($"Edges lie flat while the sheet is warm: heat and shrinking ink may lift them up to {bent.All.LiftMm:0.0} mm, {held}. Watch all four edges through the first passes, hand at the stop; over {MostLiftMm:0.0} mm stops the run.");
    }

    private static IEnumerable<Figure> Figures(PressDescription press, Stock stock, Bent bent, double differenceK, double inkMm, double highest)
    {
        yield return new("edge lift, own weight alone", bent.ByWeight.LiftMm, "mm",
            Invariant($"D k²/(2p): D {bent.StiffnessNm:0.00} N·m, bow {stock.BowMm} mm so k {bent.ByWeight.CurvaturePerM:0.0000}/m, p {bent.WeightPa:0.0} Pa"), FigureSource.Derived);
        yield return new("edge lift, vacuum acting", bent.Sucked.LiftMm, "mm",
            Invariant($"the same with p {bent.SuckedPa:0} Pa: own weight + {press.Vacuum.FullKpa} kPa on {press.Vacuum.OpenAreaPercent} % open area"), FigureSource.Derived);
        yield return new("edge lift with heat and shrinking ink, vacuum acting", bent.Heated.LiftMm, "mm",
            Invariant($"k + heat {stock.GrowthPpmPerK}·10⁻⁶/K × {differenceK:0.0} K / {stock.ThicknessMm} mm + ink {bent.InkPerM:0.0000}/m (shrinkage assumed, measured by nobody) = {bent.Heated.CurvaturePerM:0.0000}/m"), FigureSource.Derived);
        yield return new("edge lift with heat and shrinking ink, own weight alone", bent.All.LiftMm, "mm", "the same without the vacuum: the most it can be", FigureSource.Derived);
        if (bent.StiffnessNm > 0)
            yield return new("pressure that brings the middle of a dome down", bent.DownPa, "Pa",
                Invariant($"h D/(a b⁴), a plate on its four edges: h {bent.HighMm:0.0} mm by bow and heat, {stock.WidthMm:0} × {stock.LengthMm:0} mm; {bent.SuckedPa:0} Pa act"), FigureSource.Derived);
        if (bent.StiffnessNm > 0)
            yield return new("shortest curl that the vacuum presses flat", LocalCurl.ShortestMm(bent.StiffnessNm, MostLiftMm, bent.SuckedPa), "mm",
                Invariant($"(8 D h / p)^(1/4) for an edge h {MostLiftMm:0.0} mm high, p {bent.SuckedPa:0} Pa; a shorter curl as high stands: tape it, flatten it or change the sheet"), FigureSource.Derived);
        yield return new("hump of a dome, vacuum acting", bent.DomeMm, "mm", bent.LeftMm > bent.Dome.HumpMm
            ? Invariant($"h {bent.HighMm:0.0} mm less what {bent.SuckedPa:0} Pa press down: the middle does not lie")
            : Invariant($"9 D k²/(128 p): bow and heat so k {bent.DomePerM:0.0000}/m; its edges seal"), FigureSource.Derived);
        yield return new("highest point", highest, "mm",
            Invariant($"thickness {stock.ThicknessMm} + tolerance {stock.ThicknessToleranceMm} + {(bent.DomeMm > bent.ByWeight.LiftMm ? "hump" : "edge lift")} {Math.Max(bent.ByWeight.LiftMm, bent.DomeMm):0.00} + ink {inkMm:0.000} mm"), FigureSource.OwnRule);
        yield return new("head height over the belt", HeadHeightMm(highest), "mm",
            Invariant($"highest point {highest:0.00} + clearance {ClearanceMm} mm, rounded up to {SetStepMm} mm"), FigureSource.OwnRule);
    }

    /// <summary>A sheet under its three curvatures, held by own weight or by the vacuum too.</summary>
    private sealed record Bent(
        double StiffnessNm, double WeightPa, double SuckedPa, double DomePerM, double InkPerM,
        PressedStrip ByWeight, PressedStrip Sucked, PressedStrip Heated, PressedStrip All, PressedDome Dome, double HighMm, double DownPa)
    {
        /// <summary>What is left of the dome's height where the vacuum does not bring its middle down, mm.</summary>
        public double LeftMm => DownPa > SuckedPa ? HighMm * (1 - (SuckedPa / DownPa)) : 0;

        public double DomeMm => Math.Max(Dome.HumpMm, LeftMm);

        public static Bent Of(PressDescription press, Stock stock, double meanInkUm, double differenceK)
        {
            double lengthMm = Math.Max(stock.WidthMm, stock.LengthMm);
            double stiffness = stock.Kind == StockKind.Roll ? 0 : Stiffness.PlateNm(stock.YoungGpa, stock.ThicknessMm);
            double weightPa = Math.Max(0.01, stock.WeightGPerM2 / 1000 * GravityMPerS2);
            double suckedPa = weightPa + (press.Vacuum.FullKpa * 1000 * press.Vacuum.OpenAreaPercent / 100);
            double bow = stiffness > 0 ? 8 * stock.BowMm / 1000 / Math.Pow(lengthMm / 1000, 2) : 0;
            double ink = stiffness > 0 ? InkShrinkage.CurvaturePerM(stock.YoungGpa, stock.ThicknessMm, meanInkUm) : 0;
            double heat = stiffness > 0 ? stock.GrowthPpmPerK * 1e-6 * differenceK / (stock.ThicknessMm / 1000) : 0;
            double high = InkShrinkage.BowMm(bow + heat, lengthMm);
            double down = stiffness > 0 ? SealedPlate.PressurePa(stiffness, stock.WidthMm, stock.LengthMm, high) : 0;
            PressedStrip Strip(double curvature, double pa) => PressedStrip.OfCurvature(stiffness, curvature, lengthMm, pa);
            return new(stiffness, weightPa, suckedPa, bow + heat, ink, Strip(bow, weightPa), Strip(bow, suckedPa),
                Strip(bow + ink + heat, suckedPa), Strip(bow + ink + heat, weightPa), PressedDome.OfCurvature(stiffness, bow + heat, lengthMm, suckedPa), high, down);
        }
    }
}
