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
}
