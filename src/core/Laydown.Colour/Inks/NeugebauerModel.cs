using System.Numerics;
using System.Runtime.Intrinsics;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Colour.Inks;

/// <summary>Spectral Neugebauer model with the Yule–Nielsen factor: coverages of the inks → reflectance → colour [Yule1951]
/// [Viggiano1990].</summary>
/// <remarks>
/// R = (Σ wⱼ Rⱼ^(1/n))^n over all overprints j of solids; wⱼ by Demichel's product of coverages, good for independent (stochastic)
/// screens.
/// n = 1: no light spreads under the ink; 2: it spreads wholly; real inkjet asks for more, as drops also differ in thickness.
/// </remarks>
public sealed class NeugebauerModel : IInkModel
{
    private readonly double[] flat;
    private readonly int primaryCount;
    private readonly double exponent;
    private readonly SpectralWeights weights;
    private readonly QuadraticMix? quadratic;

    /// <summary>A model from its overprints.</summary>
    /// <param name="primaries">2^inks reflectances in the product's bands, each over 0 to 1; bit i of the index tells whether ink i is
    /// solid.</param>
    /// <param name="yuleNielsen">n, 1 to 100.</param>
    /// <param name="weights">Weights of light and observer in the product's bands.</param>
    /// <exception cref="ArgumentException">Not 2, 4, … 256 primaries, a reflectance outside its range, or weights for other
    /// bands.</exception>
    public NeugebauerModel(IReadOnlyList<double[]> primaries, double yuleNielsen, SpectralWeights weights)
    {
        if (primaries.Count is < 2 or > 256 || !BitOperations.IsPow2(primaries.Count))
            throw new ArgumentException(Invariant($"{primaries.Count} primaries: wanted 2, 4, … 256."), nameof(primaries));
        if (primaries.Any(p => p.Length != Bands.Count || p.Any(r => !(r is > 0 and <= 1))))
            throw new ArgumentException(Invariant($"Primaries: wanted {Bands.Count} reflectances over 0 to 1 each."), nameof(primaries));
        if (!(yuleNielsen is >= 1 and <= 100))
            throw new ArgumentOutOfRangeException(nameof(yuleNielsen), yuleNielsen, "Yule–Nielsen factor: wanted 1 to 100.");
        if (weights.Count != Bands.Count || weights.FirstNm != Bands.FirstNm)
            throw new ArgumentException("Weights: wanted 380 nm to 730 nm every 10 nm.", nameof(weights));

        Inks = BitOperations.Log2((uint)primaries.Count);
        exponent = yuleNielsen;
        this.weights = weights;
        primaryCount = primaries.Count;
        flat = [.. primaries.SelectMany(p => p.Select(r => Math.Pow(r, 1 / yuleNielsen)))];
        White = weights.Of(primaries[0]);
        quadratic = yuleNielsen == 2 && primaryCount >= 4 ? new(flat, primaryCount, weights) : null;
    }

    /// <summary>Number of inks.</summary>
    public int Inks { get; }

    /// <summary>Tristimulus values of the bare stock; the perfect diffuser has Y = 100.</summary>
    public Xyz White { get; }

    /// <summary>White of the light the model is seen in; Y = 100.</summary>
    public Xyz LightWhite => weights.White;

    /// <summary>Reflectance of a mixture, band by band.</summary>
    /// <param name="coverages">One for each ink, 0 to 1.</param>
    /// <exception cref="ArgumentException">Another number of coverages.</exception>
    public double[] Reflectance(ReadOnlySpan<double> coverages)
    {
        Check(coverages);
        double[] share = new double[primaryCount];
        Demichel.Shares(coverages, share);
        double[] reflectance = new double[Bands.Count];
        Mix(share, reflectance);
        for (int band = 0; band < Bands.Count; band++)
            reflectance[band] = Raise(reflectance[band]);
        return reflectance;
    }

    /// <summary>Tristimulus values of a mixture; the perfect diffuser has Y = 100.</summary>
    public Xyz ToXyz(ReadOnlySpan<double> coverages) => weights.Of(Reflectance(coverages));

    /// <summary>Tristimulus values and how they change with each ink.</summary>
    /// <param name="coverages">One for each ink, 0 to 1.</param>
    /// <param name="slopes">Receives for each ink dX, dY, dZ for one unit of coverage.</param>
    /// <remarks>With n = 2 by <see cref="QuadraticMix"/>, five times as fast as <see cref="ToXyzByBands"/>; equal to 1e-9.</remarks>
    public Xyz ToXyz(ReadOnlySpan<double> coverages, Span<Xyz> slopes)
    {
        Check(coverages);
        return quadratic is null ? ToXyzByBands(coverages, slopes) : quadratic.ToXyz(coverages, slopes);
    }

    /// <summary>The same for any n, band by band: the plain way.</summary>
    public Xyz ToXyzByBands(ReadOnlySpan<double> coverages, Span<Xyz> slopes)
    {
        Check(coverages);
        Span<double> share = stackalloc double[primaryCount];
        Demichel.Shares(coverages, share);
        Span<double> root = stackalloc double[Bands.Count], steep = stackalloc double[Bands.Count];
        Mix(share, root);

        // The outer power is the same for the value and for every slope.
        for (int band = 0; band < Bands.Count; band++)
        {
            double value = Raise(root[band]);
            steep[band] = exponent * value / root[band];
            root[band] = value;
        }

        Xyz colour = weights.Of(root);
        for (int ink = 0; ink < Inks; ink++)
        {
            Demichel.Slopes(coverages, ink, share);
            Mix(share, root);
            for (int band = 0; band < Bands.Count; band++)
                root[band] *= steep[band];
            slopes[ink] = weights.Of(root);
        }

        return colour;
    }

    private double Raise(double root) => exponent switch
    {
        1 => root,
        2 => root * root,
        _ => Math.Pow(root, exponent),
    };

    // Four bands side by side, whatever the machine could do at once: the same sums, bit by bit, everywhere.
    private void Mix(ReadOnlySpan<double> share, Span<double> mixed)
    {
        for (int band = 0; band < Bands.Count; band += Vector256<double>.Count)
        {
            Vector256<double> sum = Vector256<double>.Zero;
            for (int j = 0, at = band; j < share.Length; j++, at += Bands.Count)
                sum += Vector256.Create<double>(flat.AsSpan(at, Vector256<double>.Count)) * share[j];
            sum.CopyTo(mixed[band..]);
        }
    }

    private void Check(ReadOnlySpan<double> coverages)
    {
        if (coverages.Length != Inks)
            throw new ArgumentException(Invariant($"{coverages.Length} coverages: wanted {Inks}."), nameof(coverages));
    }
}
