namespace Laydown.Raster.Passes;

/// <summary>What of a profile along the feed is left for the eye: each frequency weighted by how well it is seen.</summary>
/// <remarks>
/// Several rows are averaged first where a degree holds more than 512 of them; then a Fourier transform, the weights, and back. A profile
/// is given with rows beyond
/// both ends of the sheet, where the walk goes on, because cutting off a pattern of rows would itself be a line. Two profiles are done at
/// once, as the real and the
/// imaginary part: the weights are real and even, so they do not mix.
/// </remarks>
internal sealed class EyeAlongFeed
{
    // However far the viewer stands, no more is simulated beyond an end.
    private const int MostBeyond = 16_384;

    private readonly double[] weights, cosines, sines;
    private readonly int beyondSamples;

    /// <summary>An eye for profiles of that many rows.</summary>
    /// <param name="rows">Rows of the sheet, at least 1.</param>
    /// <param name="rowsPerDegree">Rows in a degree of the view, over 0.</param>
    /// <param name="weight">Weight by frequency in periods a degree.</param>
    /// <param name="beyondDegrees">Degrees beyond either end: as far as the eye's own spread reaches.</param>
    public EyeAlongFeed(int rows, double rowsPerDegree, Func<double, double> weight, double beyondDegrees = 2)
    {
        RowsPerSample = Math.Max(1, (int)(rowsPerDegree / 256));
        Samples = (rows + RowsPerSample - 1) / RowsPerSample;
        beyondSamples = (int)Math.Min(beyondDegrees * rowsPerDegree, MostBeyond) / RowsPerSample;
        double perDegree = rowsPerDegree / RowsPerSample;
        int length = 2;
        while (length < Samples + (2 * beyondSamples))
            length *= 2;
        weights = [.. Enumerable.Range(0, length).Select(i => weight(Math.Min(i, length - i) * perDegree / length))];
        cosines = [.. Enumerable.Range(0, length / 2).Select(i => Math.Cos(2 * Math.PI * i / length))];
        sines = [.. Enumerable.Range(0, length / 2).Select(i => Math.Sin(2 * Math.PI * i / length))];
    }

    /// <summary>Rows beyond either end of the sheet that a profile must have.</summary>
    public int BeyondRows => beyondSamples * RowsPerSample;

    /// <summary>Rows averaged to one sample of the result.</summary>
    public int RowsPerSample { get; }

    /// <summary>Samples of a result.</summary>
    public int Samples { get; }

    /// <summary>Filters two profiles, given with the rows beyond; what comes back is the sheet alone.</summary>
    public (double[] One, double[] Other) See(double[] one, double[] other)
    {
        double[] real = Averaged(one), imaginary = Averaged(other);
        Transform(real, imaginary);
        for (int i = 0; i < weights.Length; i++)
        {
            real[i] *= weights[i] / weights.Length;
            imaginary[i] *= weights[i] / weights.Length;
        }

        // The way back is the same transform with the two parts changed over.
        Transform(imaginary, real);
        return (real[beyondSamples..(beyondSamples + Samples)], imaginary[beyondSamples..(beyondSamples + Samples)]);
    }

    private double[] Averaged(double[] profile)
    {
        double[] samples = new double[weights.Length];
        for (int row = 0; row < profile.Length; row++)
            samples[row / RowsPerSample] += profile[row] / RowsPerSample;
        return samples;
    }

    private void Transform(double[] real, double[] imaginary)
    {
        int length = real.Length;
        for (int i = 1, j = 0; i < length; i++)
        {
            int bit = length >> 1;
            for (; (j & bit) != 0; bit >>= 1)
                j ^= bit;
            j ^= bit;
            if (i < j)
                (real[i], real[j], imaginary[i], imaginary[j]) = (real[j], real[i], imaginary[j], imaginary[i]);
        }

        for (int half = 1; half < length; half *= 2)
        {
            int step = length / (2 * half);
            for (int start = 0; start < length; start += 2 * half)
            {
                for (int k = 0, turn = 0; k < half; k++, turn += step)
                    Cross(real, imaginary, start + k, start + k + half, cosines[turn], sines[turn]);
            }
        }
    }

    private static void Cross(double[] real, double[] imaginary, int a, int b, double cosine, double sine)
    {
        double r = (real[b] * cosine) + (imaginary[b] * sine), i = (imaginary[b] * cosine) - (real[b] * sine);
        (real[b], imaginary[b]) = (real[a] - r, imaginary[a] - i);
        (real[a], imaginary[a]) = (real[a] + r, imaginary[a] + i);
    }
}
