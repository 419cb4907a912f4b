namespace Laydown.Optics.Layers;

/// <summary>A turbid layer by the two fluxes of Kubelka and Munk [Kubelka1948].</summary>
/// <remarks>
/// a = 1 + K/S, b = √(a² − 1), e = exp(−2bSX): R = (1 − e)/((a + b) − (a − b)e), T = 2b·exp(−bSX)/((a + b) − (a − b)e); never overflows.
/// Right to about 0.01–0.03 for white layers; wrong by up to 0.3 for thin ones with faces to air (docs/decisions/0007).
/// </remarks>
public static class KubelkaMunk
{
    /// <summary>A free layer, without surfaces.</summary>
    /// <param name="absorption">K times thickness, 0 or more.</param>
    /// <param name="scatter">S times thickness, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or under 0.</exception>
    public static LayerLight Layer(double absorption, double scatter)
    {
        CheckAmount(absorption, nameof(absorption));
        CheckAmount(scatter, nameof(scatter));
        if (scatter == 0)
            return LayerLight.Symmetric(0, Math.Exp(-absorption));
        if (absorption == 0)
            return LayerLight.Symmetric(scatter / (1 + scatter), 1 / (1 + scatter));

        // (a − 1)(a + 1) keeps b exact where K is far smaller than S.
        double ratio = absorption / scatter;
        double a = 1 + ratio;
        double b = Math.Sqrt(ratio * (a + 1));
        double once = Math.Exp(-b * scatter);
        double lost = -double.ExpM1(-2 * b * scatter);
        double below = (2 * b) + ((a - b) * lost);
        return LayerLight.Symmetric(lost / below, 2 * b * once / below);
    }

    /// <summary>Reflectance of a layer so thick that nothing comes through: 1 + K/S − √((K/S)² + 2K/S).</summary>
    /// <param name="ratio">K/S, 0 or more.</param>
    public static double ThickReflectance(double ratio)
    {
        CheckAmount(ratio, nameof(ratio));
        return 1 / (1 + ratio + Math.Sqrt((ratio * ratio) + (2 * ratio)));
    }

    private static void CheckAmount(double value, string name)
    {
        if (!(value >= 0 && double.IsFinite(value)))
            throw new ArgumentOutOfRangeException(name, value, "Kubelka–Munk layer: wanted 0 or more.");
    }
}
