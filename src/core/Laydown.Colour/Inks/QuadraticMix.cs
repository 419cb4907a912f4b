using System.Runtime.Intrinsics;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Colour.Inks;

/// <summary>
/// The Neugebauer model with n = 2 without its bands: R is the square of a sum over overprints, so X, Y and Z are quadratic forms of
/// the shares,
/// X = Σᵢⱼ wᵢ wⱼ Qᵢⱼ with Qᵢⱼ = Σ_bands W √Rᵢ √Rⱼ, made once.
/// </summary>
internal sealed class QuadraticMix
{
    private readonly int count;
    private readonly double[] forms;

    /// <summary>The forms of a set of overprints.</summary>
    /// <param name="roots">Square roots of the reflectances, overprint after overprint.</param>
    /// <param name="count">Number of overprints, a multiple of four.</param>
    /// <param name="weights">Weights of light and observer.</param>
    internal QuadraticMix(double[] roots, int count, SpectralWeights weights)
    {
        this.count = count;
        forms = new double[3 * count * count];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < count; j++)
            {
                double[] product = new double[Bands.Count];
                for (int band = 0; band < Bands.Count; band++)
                    product[band] = roots[(i * Bands.Count) + band] * roots[(j * Bands.Count) + band];
                Xyz form = weights.Of(product);
                (forms[(i * count) + j], forms[(((count + i) * count) + j)], forms[((((2 * count) + i) * count) + j)]) = (form.X, form.Y, form.Z);
            }
        }
    }

    /// <summary>Tristimulus values and their change with each ink.</summary>
    internal Xyz ToXyz(ReadOnlySpan<double> coverages, Span<Xyz> slopes)
    {
        Span<double> share = stackalloc double[count], half = stackalloc double[3 * count];
        Demichel.Shares(coverages, share);

        // Half the gradient by share first: Q w. The value is w·Qw, each slope is 2 dw·Qw.
        for (int row = 0; row < half.Length; row++)
            half[row] = Dot(forms.AsSpan(row * count, count), share);
        Xyz colour = Along(half, share, 1);
        for (int ink = 0; ink < coverages.Length; ink++)
        {
            Demichel.Slopes(coverages, ink, share);
            slopes[ink] = Along(half, share, 2);
        }

        return colour;
    }

    private Xyz Along(ReadOnlySpan<double> half, ReadOnlySpan<double> share, double factor) => new(
        factor * Dot(half[..count], share), factor * Dot(half.Slice(count, count), share), factor * Dot(half.Slice(2 * count, count), share));

    private static double Dot(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        Vector256<double> sum = Vector256<double>.Zero;
        for (int i = 0; i < one.Length; i += Vector256<double>.Count)
            sum += Vector256.Create(one[i..]) * Vector256.Create(other[i..]);
        return Vector256.Sum(sum);
    }
}
