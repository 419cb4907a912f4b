namespace Laydown.Optics.Panels;

/// <summary>How well the eye sees a weak grating, by its frequency [Barten2003].</summary>
/// <remarks>
/// S(u) = 5200 e^(−0.0016 u² (1 + 100/L)^0.08) / √((1 + 144/X0² + 0.64 u²)(63/L^0.83 + 1/(1 − e^(−0.02 u²)))) with u in cycles a degree, L in
/// cd/m² and X0 the width of the field in degrees (from memory; only ratios of S are used here).
/// </remarks>
internal static class ContrastSensitivity
{
    /// <summary>Sensitivity, over 0.</summary>
    internal static double At(double cyclesPerDegree, double cdPerM2, double fieldDegrees)
    {
        double u2 = cyclesPerDegree * cyclesPerDegree;
        double optics = 5200 * Math.Exp(-0.0016 * u2 * Math.Pow(1 + (100 / cdPerM2), 0.08));
        double field = 1 + (144 / (fieldDegrees * fieldDegrees)) + (0.64 * u2);
        double noise = (63 / Math.Pow(cdPerM2, 0.83)) + (1 / (1 - Math.Exp(-0.02 * u2)));
        return optics / Math.Sqrt(field * noise);
    }

    /// <summary>Sensitivity over its highest between 0.5 and 40 cycles a degree.</summary>
    internal static double Relative(double cyclesPerDegree, double cdPerM2, double fieldDegrees)
    {
        double top = Enumerable.Range(1, 80).Max(i => At(i / 2.0, cdPerM2, fieldDegrees));
        return Math.Min(1, At(cyclesPerDegree, cdPerM2, fieldDegrees) / top);
    }
}
