using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>What the vacuum under the belt does.</summary>
public static class Suction
{
    /// <summary>Force on a sheet, N: under-pressure × area on which it acts.</summary>
    /// <param name="underPressureKpa">Under-pressure, kPa, 0 to 101.</param>
    /// <param name="areaM2">Area of the sheet, m².</param>
    /// <param name="openAreaPercent">Share of the area that is hole, percent: only there a sheet that seals is pulled.</param>
    public static double ForceN(double underPressureKpa, double areaM2, double openAreaPercent) =>
        Bounds.Within(underPressureKpa, 0, 101) * 1000 * Bounds.Within(areaM2, 0, 1e6) * Bounds.Within(openAreaPercent, 0, 100) / 100;

    /// <summary>Air drawn through an open area, m³/h: Q = C A √(2 Δp / ρ), with ρ = 1.2 kg/m³.</summary>
    /// <param name="openCm2">Open area, cm².</param>
    /// <param name="underPressureKpa">Under-pressure, kPa, 0 to 101.</param>
    /// <param name="dischargeCoefficient">C of a sharp-edged hole, 0 to 1.</param>
    public static double LeakM3PerHour(double openCm2, double underPressureKpa, double dischargeCoefficient = 0.6) =>
        Bounds.Within(dischargeCoefficient, 0, 1) * Bounds.Within(openCm2, 0, 1e7) * 1e-4
        * Math.Sqrt(2 * Bounds.Within(underPressureKpa, 0, 101) * 1000 / 1.2) * 3600;
}
