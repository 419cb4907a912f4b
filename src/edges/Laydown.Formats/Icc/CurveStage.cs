namespace Laydown.Formats.Icc;

/// <summary>One curve of a profile: sampled at even steps, or a formula of ICC.1. [ICC1]</summary>
internal sealed class CurveStage
{
    private readonly double[] samples;
    private readonly int formula;

    private CurveStage(double[] samples, int formula) => (this.samples, this.formula) = (samples, formula);

    /// <summary>The samples, 0 to 1; none for a formula.</summary>
    internal IReadOnlyList<double> Samples => formula < 0 ? samples : [];

    /// <summary>A curve through samples, at least two.</summary>
    internal static CurveStage Sampled(double[] samples) => new(samples, -1);

    /// <summary>Reads a curv or para element.</summary>
    /// <param name="tag">Name for messages.</param>
    /// <param name="bytes">From its type signature on; may be longer.</param>
    /// <param name="length">Receives its own bytes, without padding.</param>
    /// <exception cref="TagFaultException">Other type, cut short, numbers that give no curve.</exception>
    internal static CurveStage Read(string tag, ReadOnlySpan<byte> bytes, out int length)
    {
        if (bytes.Length < 12)
            throw new TagFaultException(tag, Invariant($"{bytes.Length} bytes for a curve"), "at least 12");
        string type = TagTable.Ascii(bytes[..4]);
        return type switch
        {
            "curv" => ReadSamples(tag, bytes, out length),
            "para" => ReadFormula(tag, bytes, out length),
            _ => throw new TagFaultException(tag, Invariant($"curve of type {type}"), "curv or para"),
        };
    }

    /// <summary>The value; a sampled curve takes 0 to 1 and holds its ends beyond.</summary>
    internal double At(double x)
    {
        if (formula < 0)
            return AtSample(x);
        double[] p = samples;
        return formula switch
        {
            0 => Power(x, p[0]),
            1 => x >= -p[2] / p[1] ? Power((p[1] * x) + p[2], p[0]) : 0,
            2 => x >= -p[2] / p[1] ? Power((p[1] * x) + p[2], p[0]) + p[3] : p[3],
            3 => x >= p[4] ? Power((p[1] * x) + p[2], p[0]) : p[3] * x,
            _ => x >= p[4] ? Power((p[1] * x) + p[2], p[0]) + p[5] : (p[3] * x) + p[6],
        };
    }

    /// <summary>Where a steady curve has this value, within 0 to 1; the nearer end beyond.</summary>
    internal double Inverse(double y)
    {
        bool rising = At(1) >= At(0);
        double low = 0, high = 1;
        for (int step = 0; step < 54; step++)
        {
            double middle = (low + high) / 2;
            if ((At(middle) < y) == rising)
                low = middle;
            else
                high = middle;
        }

        return (rising ? At(0) >= y : At(0) <= y) ? 0 : (rising ? At(1) <= y : At(1) >= y) ? 1 : (low + high) / 2;
    }

    private static double Power(double x, double exponent) => exponent == 1 ? x : Math.Pow(Math.Max(0, x), exponent);

    private static CurveStage ReadSamples(string tag, ReadOnlySpan<byte> bytes, out int length)
    {
        uint count = TagTable.U32(bytes[8..]);
        if (12 + (2L * count) > bytes.Length)
            throw new TagFaultException(tag, Invariant($"{count} entries of a curve in {bytes.Length} bytes"), "as many as there are bytes for");
        length = 12 + (2 * (int)count);
        if (count == 0)
            return new([1], 0);
        if (count == 1)
            return new([TagTable.U16(bytes[12..]) / 256.0], 0);
        double[] samples = new double[count];
        for (int i = 0; i < samples.Length; i++)
            samples[i] = TagTable.U16(bytes[(12 + (2 * i))..]) / 65535.0;
        return Sampled(samples);
    }

    private static CurveStage ReadFormula(string tag, ReadOnlySpan<byte> bytes, out int length)
    {
        ReadOnlySpan<int> numbers = [1, 3, 4, 5, 7];
        int formula = TagTable.U16(bytes[8..]);
        if (formula > 4 || bytes.Length < 12 + (4 * numbers[formula]))
            throw new TagFaultException(tag, Invariant($"curve formula {formula} in {bytes.Length} bytes"), "formula 0 to 4 with its numbers");
        double[] p = new double[numbers[formula]];
        for (int i = 0; i < p.Length; i++)
            p[i] = TagTable.Fixed(bytes[(12 + (4 * i))..]);
        if (p[0] <= 0 || (formula is 1 or 2 && p[1] == 0))
            throw new TagFaultException(tag, Invariant($"curve formula {formula} with exponent {p[0]}"), "an exponent over 0, a slope other than 0");
        length = 12 + (4 * p.Length);
        return new(p, formula);
    }

    private double AtSample(double x)
    {
        double place = Math.Clamp(x, 0, 1) * (samples.Length - 1);
        int low = Math.Min((int)place, samples.Length - 2);
        return samples[low] + ((place - low) * (samples[low + 1] - samples[low]));
    }
}
