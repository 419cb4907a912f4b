using Laydown.Measures;
using Laydown.Press.Cure;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Press.Heat;

/// <summary>Heat that lamps and curing ink put into a sheet.</summary>
/// <remarks>
/// Every passage of the lamps leaves its energy in the upper side; nothing is taken to be thrown back, so the sheet errs on the warm side. Between passages the
/// heat spreads through the thickness as in a slab that lets nothing out below, [CarslawJaeger1959], and a little leaves the sheet. Only the strip under the carriage is
/// that warm on one side; what bends the whole sheet is the mean over it, which is that of the same heat given evenly while the face is printed.
/// </remarks>
public static class SheetWarmths
{
    /// <summary>Temperature of the room reckoned with, °C; common practice, no source.</summary>
    public const double RoomC = 25;

    /// <summary>Heat set free by curing acrylate ink, J/g: some 80 kJ for each mole of double bonds, 5 mol/kg, most of them used up; from memory.</summary>
    public const double CureJPerG = 350;

    /// <summary>Mass of ink, g for each ml; from memory.</summary>
    public const double InkGPerMl = 1.1;

    /// <summary>Heat that leaves a square metre of board to air and belt for each kelvin, W/(m²·K); own assumption, low side, measured by nobody.</summary>
    public const double LossWPerM2K = 20;

    /// <summary>The same of a web, which lies close on the belt, W/(m²·K); own assumption, low side, measured by nobody.</summary>
    public const double WebLossWPerM2K = 100;

    /// <summary>Specific heat taken where a stock gives none, J/(kg·K): that of aluminium, the least of usual sheets; from memory.</summary>
    public const double SpecificHeatTaken = 900;

    /// <summary>Difference from upper to lower side taken where a stock gives no conductivity, K; own assumption, measured by nobody.</summary>
    public const double DifferenceTakenK = 5;

    // The terms fall with the fourth power of their number: what 60 odd ones leave out is under one part in 10⁵ at rest, under 1 % right after a passage.
    private const int Terms = 120;

    /// <summary>Warmth after all layers of one face.</summary>
    /// <param name="press">The press.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="layers">Layers of that face printed in one go, at least 1.</param>
    /// <param name="inkUm">Most ink of that face, µm (1 ml/m² is 1 µm).</param>
    /// <param name="acrossMm">Width that the carriage crosses, mm, over 0.</param>
    /// <param name="faceSeconds">Time the face takes, s; 0 where it is not known, then the strip under the carriage counts for the sheet.</param>
    public static SheetWarmth Of(PressDescription press, Mode mode, Stock stock, int layers, double inkUm, double acrossMm, double faceSeconds = 0)
    {
        int passages = Math.Max(1, layers) * Math.Max(1, mode.Passes);
        double everyS = Scanning.SecondsPerScan(press.Carriage, mode, Bounds.Within(acrossMm, 0.001, 1e6));
        double lampJ = 10 * press.Lamp.Count * Dose.OfPassage(press.Lamp.IrradianceWPerCm2 * mode.LampPercent / 100, press.Lamp.WindowMm, mode.SpeedMPerS);
        double inkJ = Bounds.Within(inkUm, 0, 10_000) * InkGPerMl * CureJPerG / passages;
        double capacity = Math.Max(1, stock.WeightGPerM2) / 1000 * (stock.SpecificHeatJPerKgK ?? SpecificHeatTaken);
        double eachK = (lampJ + inkJ) / capacity;
        double loss = stock.Kind == StockKind.Roll ? WebLossWPerM2K : LossWPerM2K;
        double rise = RiseK(eachK, passages, loss * everyS / capacity);
        double? spread = stock.ConductivityWPerMK is { } k ? k * everyS / (capacity * stock.ThicknessMm / 1000) : null;
        double strip = spread is { } fourier ? DifferenceK(eachK, passages, fourier) : DifferenceTakenK;
        double difference = spread is null ? strip : Math.Min(strip, EvenDifferenceK(eachK * capacity * passages, faceSeconds, stock.ThicknessMm, stock.ConductivityWPerMK!.Value));
        return new(rise, difference,
        [
            new("rise of the sheet's temperature under the lamps", rise, "K",
                Invariant($"{passages} passages every {everyS:0.0} s, each ({lampJ:0} J of lamp + {inkJ:0} J of ink) / {capacity:0} J/K for a square metre; {loss} W/K leave it"), FigureSource.Derived),
            new("difference of upper and lower side", difference, "K", spread is null
                ? Invariant($"{stock.Name} gives no conductivity: {DifferenceTakenK} K taken")
                : Invariant($"{eachK:0.00} K for each passage, spread by {stock.ConductivityWPerMK} W/(m·K) through {stock.ThicknessMm} mm: {strip:0.0} K in the strip under the carriage, {difference:0.0} K over the whole sheet"), FigureSource.Derived),
        ]);
    }

    /// <summary>Rise after equal pulses of heat at equal times, of which a part leaves in between, K.</summary>
    /// <param name="eachK">Rise by one pulse, K.</param>
    /// <param name="pulses">How many, at least 1.</param>
    /// <param name="lossBetween">Heat lost between two pulses for each of what is there, as an exponent, not negative.</param>
    public static double RiseK(double eachK, int pulses, double lossBetween) => eachK * Pulses(pulses, Bounds.Within(lossBetween, 0, 1e6));

    /// <summary>
    /// Even difference of temperature that bends as the profile does right after the last of equal pulses on the upper side of a slab closed below:
    /// ΔT = e Σ 48 / (m² π²) (1 − rᵐⁿ) / (1 − rₘ) over odd m, rₘ = exp(−m² π² F), K.
    /// </summary>
    /// <param name="eachK">Rise of the mean by one pulse e, K.</param>
    /// <param name="pulses">How many n, at least 1.</param>
    /// <param name="fourier">Diffusivity × time between pulses / thickness², F, over 0.</param>
    public static double DifferenceK(double eachK, int pulses, double fourier)
    {
        double sum = 0;
        for (int m = 1; m < Terms; m += 2)
        {
            double order = m * m * Math.PI * Math.PI;
            sum += 48 / order * Pulses(pulses, order * Bounds.Within(fourier, 1e-12, 1e12));
        }

        return eachK * sum;
    }

    /// <summary>Difference of a slab heated evenly on its upper side, K: q t / (2 k) with q the heat over the time; without end where the time is 0.</summary>
    /// <param name="jPerM2">Heat of the whole face, J/m².</param>
    /// <param name="seconds">Time it takes, s.</param>
    /// <param name="thicknessMm">Thickness, mm.</param>
    /// <param name="conductivity">Conductivity, W/(m·K), over 0.</param>
    public static double EvenDifferenceK(double jPerM2, double seconds, double thicknessMm, double conductivity) =>
        seconds > 0 ? jPerM2 / seconds * (thicknessMm / 1000) / (2 * Bounds.Within(conductivity, 1e-6, 1e6)) : double.PositiveInfinity;

    // 1 + r + r² + … of n terms, r = exp(−decay).
    private static double Pulses(int n, double decay) => decay < 1e-9 ? n : (1 - Math.Exp(-decay * n)) / (1 - Math.Exp(-decay));
}
