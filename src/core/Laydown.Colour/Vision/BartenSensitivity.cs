using Laydown.Measures;

namespace Laydown.Colour.Vision;

/// <summary>How weak a grating the eye still sees, by its frequency: the contrast sensitivity of Barten [Barten1999].</summary>
/// <remarks>
/// S(u) = (M(u) / k) / √( (2/T) · (1/Xe) (1/Ye) · (1/(η p E) + Φ0 / (1 − e^(−(u/u0)²))) ) with M(u) = e^(−2π² σ² u²) and
/// 1/Xe² = 1/X0² + 1/Xmax² + u²/Nmax²; signal to noise k = 3, time T = 0.1 s, Nmax = 15 periods, quantum efficiency η = 0.03,
/// neural noise Φ0 = 3·10⁻⁸ s deg², u0 = 7 periods a degree. A grating of contrast 1/S(u) is seen in half of the looks.
/// </remarks>
public static class BartenSensitivity
{
    private const double SignalToNoise = 3, Seconds = 0.1, MostPeriods = 15, QuantumEfficiency = 0.03, NeuralNoise = 3e-8, LateralPerDegree = 7;

    /// <summary>Sensitivity: one over the contrast of the weakest grating that is seen, without unit.</summary>
    /// <param name="cyclesPerDegree">Frequency of the grating, periods a degree, 0 to 1000; evenness (0) is not seen as contrast at all:
    /// 0.</param>
    /// <param name="eye">The eye and its field.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is NaN or outside its range.</exception>
    public static double At(double cyclesPerDegree, BartenEye eye)
    {
        double u = Bounds.Within(cyclesPerDegree, 0, 1000);
        if (u == 0)
            return 0;
        double optics = Math.Exp(-2 * Math.PI * Math.PI * eye.SigmaDegrees * eye.SigmaDegrees * u * u);
        double area = PerDegree(u, eye.WidthDegrees, eye.WidestDegrees) * PerDegree(u, eye.HeightDegrees, eye.WidestDegrees);
        double photons = 1 / (QuantumEfficiency * eye.PhotonsPerTroland * eye.Trolands);
        double nerves = NeuralNoise / -double.ExpM1(-(u / LateralPerDegree) * (u / LateralPerDegree));
        return optics / SignalToNoise / Math.Sqrt(2 / Seconds * area * (photons + nerves));
    }

    /// <summary>The highest sensitivity and where it lies.</summary>
    /// <returns>Frequency, periods a degree, to 0.05; sensitivity there.</returns>
    public static (double CyclesPerDegree, double Sensitivity) Best(BartenEye eye) =>
        Enumerable.Range(1, 800).Select(i => (i * 0.05, At(i * 0.05, eye))).MaxBy(p => p.Item2);

    private static double PerDegree(double u, double fieldDegrees, double widestDegrees) =>
        Math.Sqrt((1 / (fieldDegrees * fieldDegrees)) + (1 / (widestDegrees * widestDegrees)) + (u * u / (MostPeriods * MostPeriods)));
}
