using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>How restless a mixture of light and dark dots looks: Σ a (1 − a) ΔL*², each dot against what surrounds it.</summary>
/// <remarks>
/// A dot of coverage a on an even ground varies lightness by a (1 − a) ΔL*². A light dot stands on bare stock; a dark dot stands on the
/// mean of stock and light dots. A proxy for comparing splits, not a measured graininess: own construction, no source.
/// </remarks>
/// <param name="PaperL">Lightness of the stock.</param>
/// <param name="LightL">Lightness of the full light ink.</param>
/// <param name="DarkL">Lightness of the full dark ink.</param>
public sealed record DotGrain(double PaperL, double LightL, double DarkL)
{
    /// <summary>Graininess of one mixture, ΔL*².</summary>
    /// <param name="light">Coverage of the light ink, 0 to 1.</param>
    /// <param name="dark">Coverage of the dark ink, 0 to 1.</param>
    public double Of(double light, double dark)
    {
        double a = Math.Clamp(light, 0, 1), b = Math.Clamp(dark, 0, 1), step = PaperL - LightL;
        double darkStep = PaperL - (a * step) - DarkL;
        return (a * (1 - a) * step * step) + (b * (1 - b) * darkStep * darkStep);
    }

    /// <summary>Mean over even demands of a split given by its dark ink.</summary>
    /// <param name="strength">Colourant of the light ink as a share of the dark ink's.</param>
    /// <param name="dark">Dark ink at even steps of the demand from 0 to 1, parts of one full ink.</param>
    public double Mean(double strength, IReadOnlyList<double> dark)
    {
        Bounds.Within(dark.Count, 2, int.MaxValue);
        double sum = 0;
        for (int i = 0; i < dark.Count; i++)
            sum += Of((i / (dark.Count - 1.0) - dark[i]) / strength, dark[i]);
        return sum / dark.Count;
    }
}
