using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>A curled edge or corner.</summary>
public static class LocalCurl
{
    /// <summary>Pressure that flattens an edge lifted <paramref name="liftMm"/> over <paramref name="stripMm"/>: p = 8 D h / c⁴, Pa.</summary>
    /// <remarks>Cantilever under even load. It grows with c⁻⁴: a short curl cannot be sucked down.</remarks>
    /// <param name="stiffnessNm">D, N·m.</param>
    /// <param name="liftMm">Height of the edge h, mm.</param>
    /// <param name="stripMm">Length of the lifted strip c, mm, over 0.</param>
    public static double FlatteningPa(double stiffnessNm, double liftMm, double stripMm) =>
        8 * Bounds.Within(stiffnessNm, 0, 1e9) * (Bounds.Within(liftMm, 0, 1000) / 1000) / Math.Pow(Bounds.Within(stripMm, 0.1, 1e5) / 1000, 4);

    /// <summary>Shortest curl of a height that a pressure still brings flat: c = (8 D h / p)^(1/4), mm; shorter ones stand.</summary>
    /// <param name="stiffnessNm">D, N·m.</param>
    /// <param name="liftMm">Height of the edge h, mm.</param>
    /// <param name="pressurePa">Pressure p, Pa, over 0.</param>
    public static double ShortestMm(double stiffnessNm, double liftMm, double pressurePa) =>
        Math.Pow(8 * Bounds.Within(stiffnessNm, 0, 1e9) * (Bounds.Within(liftMm, 0, 1000) / 1000) / Bounds.Within(pressurePa, 1e-6, 1e9), 0.25) * 1000;
}
