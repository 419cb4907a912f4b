using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;

namespace Laydown.Colour.Densities;

/// <summary>ISO visual density: minus the decimal logarithm of reflectance seen by the eye, V(λ) under illuminant A [ISO5-3].</summary>
/// <remarks>Made of the CIE's own tables. The other status densities rest on tables that are not open; see <see cref="DensityTable"/>.</remarks>
public static class VisualDensity
{
    /// <summary>Highest density told; less light than a millionth counts as this.</summary>
    public const double Most = 6;

    /// <summary>Density against the perfect diffuser; 0 for it, under 0 for anything brighter, at most <see cref="Most"/>.</summary>
    /// <exception cref="ArgumentException">The bands do not reach from 400 nm to 700 nm or are wider than 20 nm.</exception>
    public static double Of(Spectrum spectrum)
    {
        if (!ReadingColour.Covers(spectrum.FirstNm, spectrum.StepNm, spectrum.Values.Count))
            throw new ArgumentException(Invariant($"Spectrum from {spectrum.FirstNm} nm: wanted 400 nm to 700 nm, every 1 nm to 20 nm."), nameof(spectrum));
        SpectralWeights weights = SpectralWeights.For(
            Illuminant.A, ColourMatching.TwoDegree, spectrum.FirstNm, spectrum.LastNm, spectrum.StepNm);
        return FromFactor(weights.Of([.. spectrum.Values]).Y / 100);
    }

    /// <summary>Density of a reflectance factor.</summary>
    internal static double FromFactor(double factor) => -Math.Log10(Math.Max(factor, 1e-6));
}
