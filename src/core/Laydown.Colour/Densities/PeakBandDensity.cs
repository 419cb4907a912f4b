using Laydown.Colour.Readings;

namespace Laydown.Colour.Densities;

/// <summary>Narrow-band density at the band where an ink's own solid is darkest against its stock: a number for one ink on one press, no
/// status density.</summary>
public static class PeakBandDensity
{
    /// <summary>The band, nm, in which the solid takes most of the stock's light; the lowest of several.</summary>
    /// <exception cref="ArgumentException">The bands differ.</exception>
    public static int PeakNm(Spectrum solid, Spectrum stock)
    {
        if (solid.FirstNm != stock.FirstNm || solid.StepNm != stock.StepNm || solid.Values.Count != stock.Values.Count)
            throw new ArgumentException(Invariant($"Bands from {stock.FirstNm} nm: wanted those of the solid, from {solid.FirstNm} nm."), nameof(stock));

        int peak = 0;
        double most = double.NegativeInfinity;
        for (int band = 0; band < solid.Values.Count; band++)
        {
            double density = VisualDensity.FromFactor(solid.Values[band]) - VisualDensity.FromFactor(stock.Values[band]);
            if (density > most)
                (most, peak) = (density, band);
        }

        return solid.FirstNm + (solid.StepNm * peak);
    }

    /// <summary>Density in one band, against the perfect diffuser; at most 6.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The spectrum has no such band.</exception>
    public static double At(Spectrum spectrum, int nm)
    {
        int band = (nm - spectrum.FirstNm) / spectrum.StepNm;
        if (nm < spectrum.FirstNm || nm > spectrum.LastNm || (nm - spectrum.FirstNm) % spectrum.StepNm != 0)
            throw new ArgumentOutOfRangeException(nameof(nm), nm, Invariant($"Band: wanted {spectrum.FirstNm} nm to {spectrum.LastNm} nm every {spectrum.StepNm} nm."));
        return VisualDensity.FromFactor(spectrum.Values[band]);
    }
}
