using Laydown.Measures;

namespace Laydown.Optics.Layers;

/// <summary>A halftone of inks that may scatter as well as absorb, in one band, as a free layer: coverages → reflectance and
/// transmittance.</summary>
/// <remarks>
/// The overprints of independent screens are Kubelka–Munk layers whose K·X and S·X are the sums of their inks. Factor n of Yule and Nielsen
/// [Yule1951], read as how often light changes between the dots on its way through: the layer is n slices of 1/n of its thickness, each
/// the area-weighted mean of its overprints, laid over one another. For inks that only absorb that is T = (Σ w·T_j^(1/n))^n
/// [Viggiano1990]; n = 1 is the plain mean of R and of T, n without end the mean of K·X and S·X — the logarithmic mean of T for clear inks.
/// A power mean of R by itself will not do: with n without end any bare spot would make it 0.
/// </remarks>
public sealed class TurbidHalftone
{
    /// <summary>Most inks a halftone takes; the overprints double with each.</summary>
    public const int MostInks = 8;

    private readonly TurbidAmount[] inks;
    private readonly double exponent;
    private readonly LayerLight[] slices;

    /// <summary>A halftone.</summary>
    /// <param name="inks">Amounts of each ink's full laydown, 1 to <see cref="MostInks"/> inks.</param>
    /// <param name="yuleNielsen">n, 1 to endless.</param>
    /// <exception cref="ArgumentException">Another number of inks, or n under 1 or NaN.</exception>
    public TurbidHalftone(IReadOnlyList<TurbidAmount> inks, double yuleNielsen = 1)
    {
        Bounds.Within(Bounds.NotEmpty(inks).Count, 1, MostInks);
        exponent = Bounds.Within(yuleNielsen, 1, double.PositiveInfinity);
        this.inks = [.. inks];
        slices = double.IsPositiveInfinity(exponent) ? [] : [.. Enumerable.Range(0, 1 << inks.Count).Select(Slice)];
    }

    /// <summary>n, 1 to endless.</summary>
    public double YuleNielsen => exponent;

    /// <summary>One slice of each overprint; bit i of the index tells whether ink i lies there. None where n has no end.</summary>
    internal IReadOnlyList<LayerLight> Slices => slices;

    /// <summary>The layer at coverages.</summary>
    /// <param name="coverages">One for each ink, 0 to 1.</param>
    /// <exception cref="ArgumentException">Another number of coverages.</exception>
    public LayerLight Layer(ReadOnlySpan<double> coverages)
    {
        if (coverages.Length != inks.Length)
            throw new ArgumentException(Invariant($"{coverages.Length} coverages: wanted {inks.Length}."), nameof(coverages));
        if (double.IsPositiveInfinity(exponent))
            return Mean(coverages).Layer;

        // Shares of the overprints, then the mean slice.
        Span<double> shares = stackalloc double[slices.Length];
        Shares(coverages, shares);
        double reflectance = 0, transmittance = 0;
        for (int j = 0; j < shares.Length; j++)
        {
            reflectance += shares[j] * slices[j].FrontReflectance;
            transmittance += shares[j] * slices[j].Inward;
        }

        // A slice that lets nothing through hides those under it.
        return exponent == 1 || transmittance == 0
            ? LayerLight.Symmetric(reflectance, transmittance)
            : TurbidReading.OfFilm(reflectance, transmittance).Times(exponent).Layer;
    }

    private TurbidAmount Mean(ReadOnlySpan<double> coverages)
    {
        TurbidAmount mean = default;
        for (int i = 0; i < inks.Length; i++)
            mean = mean.Plus(inks[i].Times(coverages[i]));
        return mean;
    }

    private LayerLight Slice(int overprint)
    {
        TurbidAmount sum = default;
        for (int i = 0; i < inks.Length; i++)
            sum = (overprint >> i & 1) == 1 ? sum.Plus(inks[i]) : sum;
        return sum.Times(1 / exponent).Layer;
    }

    private static void Shares(ReadOnlySpan<double> coverages, Span<double> shares)
    {
        shares[0] = 1;
        for (int ink = 0, filled = 1; ink < coverages.Length; ink++, filled *= 2)
        {
            for (int j = 0; j < filled; j++)
            {
                shares[j + filled] = shares[j] * coverages[ink];
                shares[j] *= 1 - coverages[ink];
            }
        }
    }
}
