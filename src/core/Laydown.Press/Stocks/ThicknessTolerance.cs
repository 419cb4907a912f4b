using Laydown.Measures;

namespace Laydown.Press.Stocks;

/// <summary>How far a sheet's thickness may differ from the nominal by its standard, mm either way.</summary>
public static class ThicknessTolerance
{
    /// <summary>Cast acrylic: 0.4 mm + 0.1 t [ISO7823-1].</summary>
    /// <param name="nominalMm">Nominal thickness, mm, over 0 to 100.</param>
    public static double CastAcrylicMm(double nominalMm) => 0.4 + (0.1 * Bounds.Within(nominalMm, 0.001, 100));

    /// <summary>Extruded acrylic: 10 % below 3 mm, 5 % from 3 mm on [ISO7823-2].</summary>
    /// <param name="nominalMm">Nominal thickness, mm, over 0 to 100.</param>
    public static double ExtrudedAcrylicMm(double nominalMm) => Bounds.Within(nominalMm, 0.001, 100) * (nominalMm < 3 ? 0.10 : 0.05);
}
