using Laydown.Colour.Spectra;

namespace Laydown.Optics.Fits;

/// <summary>Normal equations of least squares where K and S belong to one band each and a laydown belongs to one patch.</summary>
/// <remarks>
/// Bands meet only through the patches, so each band's two unknowns are taken out first and what is left has one row a patch. One row is
/// added by hand: the mean laydown of the full patches is 1, without which thickness and K, S could not be told apart.
/// </remarks>
internal sealed class BandEquations
{
    private const double GaugeWeight = 1e4;
    private readonly int patches;
    private readonly bool[] isFull;
    private readonly double[] kk = new double[Bands.Count], ks = new double[Bands.Count], ss = new double[Bands.Count];
    private readonly double[] gk = new double[Bands.Count], gs = new double[Bands.Count];
    private readonly double[] bk, bs, c, h;

    /// <summary>Empty equations.</summary>
    /// <param name="isFull">For each free patch whether it asks for one full laydown.</param>
    internal BandEquations(bool[] isFull)
    {
        (this.isFull, patches) = (isFull, isFull.Length);
        (bk, bs) = (new double[Bands.Count * patches], new double[Bands.Count * patches]);
        (c, h) = (new double[patches], new double[patches]);
    }

    /// <summary>Bands whose K stays as it is: it lies at 0 and would fall.</summary>
    internal bool[] HeldK { get; } = new bool[Bands.Count];

    /// <summary>Bands whose S stays as it is.</summary>
    internal bool[] HeldS { get; } = new bool[Bands.Count];

    /// <summary>How the sum of squares would fall with K, band by band.</summary>
    internal ReadOnlySpan<double> FallK => gk;

    /// <summary>How the sum of squares would fall with S.</summary>
    internal ReadOnlySpan<double> FallS => gs;

    /// <summary>Adds one weighted residual: reading less model, with the model's slopes.</summary>
    /// <param name="band">Band.</param>
    /// <param name="patch">Place of a free patch, or −1.</param>
    /// <param name="slopeK">Change with K.</param>
    /// <param name="slopeS">Change with S.</param>
    /// <param name="slopeY">Change with the laydown of the patch.</param>
    /// <param name="residual">Reading less model.</param>
    internal void Add(int band, int patch, double slopeK, double slopeS, double slopeY, double residual)
    {
        kk[band] += slopeK * slopeK;
        ks[band] += slopeK * slopeS;
        ss[band] += slopeS * slopeS;
        gk[band] += slopeK * residual;
        gs[band] += slopeS * residual;
        if (patch < 0)
            return;
        bk[(band * patches) + patch] += slopeK * slopeY;
        bs[(band * patches) + patch] += slopeS * slopeY;
        c[patch] += slopeY * slopeY;
        h[patch] += slopeY * residual;
    }

    /// <summary>The step of Levenberg and Marquardt.</summary>
    /// <param name="damping">How much shorter and steeper than Gauss–Newton; 0 for the plain step.</param>
    /// <param name="laydowns">Laydowns of the free patches as they stand.</param>
    /// <param name="stepK">Receives 36 steps.</param>
    /// <param name="stepS">Receives 36 steps.</param>
    /// <param name="stepY">Receives a step a patch.</param>
    /// <returns>Whether there is one.</returns>
    internal bool Solve(double damping, ReadOnlySpan<double> laydowns, Span<double> stepK, Span<double> stepS, Span<double> stepY)
    {
        double[] left = Reduced(damping), right = Right(damping, laydowns);
        if (!Factor(left, patches))
            return false;
        SolveFactored(left, patches, right);
        right.CopyTo(stepY);
        for (int band = 0; band < Bands.Count; band++)
        {
            (double k, double s) = (Gk(band), Gs(band));
            for (int patch = 0; patch < patches; patch++)
                (k, s) = (k - (Bk(band, patch) * right[patch]), s - (Bs(band, patch) * right[patch]));
            (stepK[band], stepS[band]) = Inverse(band, damping, k, s);
        }

        return true;
    }

    /// <summary>Variances of K and S, band by band, where each residual has variance 1; false where the equations do not determine them.</summary>
    internal bool Variances(Span<double> ofK, Span<double> ofS)
    {
        double[] left = Reduced(0);
        if (!Factor(left, patches))
            return false;
        double[] column = new double[patches];
        for (int band = 0; band < Bands.Count; band++)
        {
            ofK[band] = HeldK[band] ? 0 : Variance(band, 1, 0, left, column);
            ofS[band] = HeldS[band] ? 0 : Variance(band, 0, 1, left, column);
        }

        return true;
    }

    // uᵀA⁻¹u and, for what the patches add, vᵀM⁻¹v with v = Bᵀ A⁻¹ u.
    private double Variance(int band, double alongK, double alongS, double[] factor, double[] column)
    {
        (double k, double s) = Inverse(band, 0, alongK, alongS);
        for (int patch = 0; patch < patches; patch++)
            column[patch] = (Bk(band, patch) * k) + (Bs(band, patch) * s);
        double[] solved = [.. column];
        SolveFactored(factor, patches, solved);
        double sum = (alongK * k) + (alongS * s);
        for (int patch = 0; patch < patches; patch++)
            sum += column[patch] * solved[patch];
        return sum;
    }

    private double[] Reduced(double damping)
    {
        double[] left = new double[patches * patches];
        double gauge = GaugeWeight / Math.Max(1, isFull.Count(f => f));
        for (int i = 0; i < patches; i++)
        {
            left[(i * patches) + i] = (c[i] * (1 + damping)) + 1e-12;
            for (int j = 0; j <= i && isFull[i]; j++)
                left[(i * patches) + j] += isFull[j] ? gauge * gauge : 0;
        }

        for (int band = 0; band < Bands.Count; band++)
        {
            for (int i = 0; i < patches; i++)
            {
                (double k, double s) = Inverse(band, damping, Bk(band, i), Bs(band, i));
                for (int j = 0; j <= i; j++)
                    left[(i * patches) + j] -= (k * Bk(band, j)) + (s * Bs(band, j));
            }
        }

        return left;
    }

    private double[] Right(double damping, ReadOnlySpan<double> laydowns)
    {
        double[] right = [.. h];
        int full = isFull.Count(f => f);
        double mean = 0;
        for (int i = 0; i < patches; i++)
            mean += isFull[i] ? laydowns[i] / full : 0;
        for (int i = 0; i < patches; i++)
            right[i] += isFull[i] ? GaugeWeight * GaugeWeight * (1 - mean) / full : 0;
        for (int band = 0; band < Bands.Count; band++)
        {
            (double k, double s) = Inverse(band, damping, Gk(band), Gs(band));
            for (int i = 0; i < patches; i++)
                right[i] -= (Bk(band, i) * k) + (Bs(band, i) * s);
        }

        return right;
    }

    // The band's own 2 × 2 matrix, turned round; what is held takes no part.
    private (double K, double S) Inverse(int band, double damping, double k, double s)
    {
        double a = HeldK[band] ? 1 : (kk[band] * (1 + damping)) + 1e-12, d = HeldS[band] ? 1 : (ss[band] * (1 + damping)) + 1e-12;
        double b = HeldK[band] || HeldS[band] ? 0 : ks[band];
        (double right1, double right2) = (HeldK[band] ? 0 : k, HeldS[band] ? 0 : s);
        double determinant = (a * d) - (b * b);
        return (((d * right1) - (b * right2)) / determinant, ((a * right2) - (b * right1)) / determinant);
    }

    private double Gk(int band) => HeldK[band] ? 0 : gk[band];

    private double Gs(int band) => HeldS[band] ? 0 : gs[band];

    private double Bk(int band, int patch) => HeldK[band] ? 0 : bk[(band * patches) + patch];

    private double Bs(int band, int patch) => HeldS[band] ? 0 : bs[(band * patches) + patch];

    private static bool Factor(double[] matrix, int size)
    {
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = matrix[(i * size) + j];
                for (int m = 0; m < j; m++)
                    sum -= matrix[(i * size) + m] * matrix[(j * size) + m];
                if (i == j && !(sum > 0))
                    return false;
                matrix[(i * size) + j] = i == j ? Math.Sqrt(sum) : sum / matrix[(j * size) + j];
            }
        }

        return true;
    }

    private static void SolveFactored(double[] factor, int size, double[] right)
    {
        for (int i = 0; i < size; i++)
        {
            for (int m = 0; m < i; m++)
                right[i] -= factor[(i * size) + m] * right[m];
            right[i] /= factor[(i * size) + i];
        }

        for (int i = size - 1; i >= 0; i--)
        {
            for (int m = i + 1; m < size; m++)
                right[i] -= factor[(m * size) + i] * right[m];
            right[i] /= factor[(i * size) + i];
        }
    }
}
