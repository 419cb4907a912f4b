using Laydown.Measures;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Press.HoldDown;

/// <summary>The gap rule: where the highest point of a sheet lies and whether the heads clear it.</summary>
/// <remarks>
/// Highest point = thickness + its tolerance + edge lift under own weight + ink. Vacuum may not act under a lifted strip, because air leaks in, so
/// own weight gives the upper bound. Refused when that bound exceeds the clearance less 0.5 mm. Own rule, on the safe side.
/// </remarks>
public static class SheetHeights
{
    /// <summary>Free height wanted over the highest point, mm; common practice, no source (1.0 mm to 1.5 mm).</summary>
    public const double ClearanceMm = 1.5;

    /// <summary>What must be left of the clearance over a lifted edge, mm.</summary>
    public const double LeftOverLiftMm = 0.5;

    /// <summary>Difference of temperature from upper to lower side reckoned with under the lamps, K; own assumption, measured by nobody.</summary>
    public const double HeatK = 5;

    /// <summary>Step in which the head height is set, mm; the height is rounded up to it, so that no reader can round it down.</summary>
    public const double SetStepMm = 0.1;

    private const double GravityMPerS2 = 9.81;

    /// <summary>Works out the highest point.</summary>
    /// <param name="press">The press.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="inkUm">Ink on the sheet where it is highest, µm.</param>
    public static SheetHeight Of(PressDescription press, Stock stock, double inkUm)
    {
        double lengthMm = Math.Max(stock.WidthMm, stock.LengthMm);
        double stiffness = stock.Kind == StockKind.Roll ? 0 : Stiffness.PlateNm(stock.YoungGpa, stock.ThicknessMm);
        double weightPa = Math.Max(0.01, stock.WeightGPerM2 / 1000 * GravityMPerS2);
        double suckedPa = weightPa + (press.Vacuum.FullKpa * 1000 * press.Vacuum.OpenAreaPercent / 100);
        PressedStrip byWeight = PressedStrip.Of(stiffness, stiffness > 0 ? stock.BowMm : 0, lengthMm, weightPa);
        PressedStrip sucked = PressedStrip.OfCurvature(stiffness, byWeight.CurvaturePerM, lengthMm, suckedPa);
        double heatCurvature = stiffness > 0 ? stock.GrowthPpmPerK * 1e-6 * HeatK / (stock.ThicknessMm / 1000) : 0;
        PressedStrip heated = PressedStrip.OfCurvature(stiffness, byWeight.CurvaturePerM + heatCurvature, lengthMm, suckedPa);

        double inkMm = Bounds.Within(inkUm, 0, 10_000) / 1000;
        double highest = stock.ThicknessMm + stock.ThicknessToleranceMm + byWeight.LiftMm + inkMm;
        return new(highest, byWeight.LiftMm, sucked.LiftMm, heated.LiftMm, inkMm, HeadHeightMm(highest),
            Refusals(press, stock, byWeight.LiftMm, highest),
            Figures(press, stock, stiffness, weightPa, suckedPa, byWeight, sucked, heated, inkMm, highest));
    }

    /// <summary>Head height over the belt for a highest point, mm: clearance added, then rounded up to the next step.</summary>
    /// <param name="highestMm">Highest point over the belt, mm.</param>
    public static double HeadHeightMm(double highestMm) =>
        Math.Round(Math.Ceiling(((highestMm + ClearanceMm) / SetStepMm) - 1e-9) * SetStepMm, 1);

    private static List<string> Refusals(PressDescription press, Stock stock, double liftMm, double highestMm)
    {
        List<string> refusals = [];
        if (liftMm > ClearanceMm - LeftOverLiftMm)
            refusals.Add(Invariant($"An edge of {stock.Name} may stand {liftMm:0.0} mm high under its own weight; at most {ClearanceMm - LeftOverLiftMm:0.0} mm is let under the heads. Flatten, tape down or change the sheet."));
        if (highestMm > press.MaxThicknessMm)
            refusals.Add(Invariant($"The highest point may reach {highestMm:0.0} mm; {press.Name} clears {press.MaxThicknessMm:0.#} mm."));
        return refusals;
    }

    private static Figure[] Figures(PressDescription press, Stock stock, double stiffness, double weightPa, double suckedPa,
        PressedStrip byWeight, PressedStrip sucked, PressedStrip heated, double inkMm, double highest) =>
        [
            new("edge lift, own weight alone", byWeight.LiftMm, "mm",
                Invariant($"D k²/(2p): D {stiffness:0.00} N·m, bow {stock.BowMm} mm so k {byWeight.CurvaturePerM:0.0000}/m, p {weightPa:0.0} Pa"), FigureSource.Derived),
            new("edge lift, vacuum acting", sucked.LiftMm, "mm",
                Invariant($"the same with p {suckedPa:0} Pa: own weight + {press.Vacuum.FullKpa} kPa on {press.Vacuum.OpenAreaPercent} % open area"), FigureSource.Derived),
            new("edge lift, vacuum acting, upper side warmer", heated.LiftMm, "mm",
                Invariant($"k + {stock.GrowthPpmPerK}·10⁻⁶/K × {HeatK} K / {stock.ThicknessMm} mm = {heated.CurvaturePerM:0.0000}/m"), FigureSource.Derived),
            new("highest point", highest, "mm",
                Invariant($"thickness {stock.ThicknessMm} + tolerance {stock.ThicknessToleranceMm} + edge lift {byWeight.LiftMm:0.00} + ink {inkMm:0.000} mm"), FigureSource.OwnRule),
            new("head height over the belt", HeadHeightMm(highest), "mm",
                Invariant($"highest point {highest:0.00} + clearance {ClearanceMm} mm, rounded up to {SetStepMm} mm"), FigureSource.OwnRule),
        ];
}
