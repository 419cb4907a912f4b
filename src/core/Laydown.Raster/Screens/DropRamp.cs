namespace Laydown.Raster.Screens;

/// <summary>A share that rises with the tone in up to three straight parts: codes of 65535 in, codes of 65535 out.</summary>
internal sealed class DropRamp
{
    private readonly Part[] parts;

    /// <summary>A ramp through four points.</summary>
    /// <param name="tones">Tones of the points, 0 to 1, rising.</param>
    /// <param name="shares">Shares there, from 0 to 1.</param>
    public DropRamp(double[] tones, double[] shares)
    {
        List<Part> made = [];
        for (int part = 0; part < 3; part++)
        {
            ushort from = Code(tones[part]), to = Code(tones[part + 1]);
            int rise = Code(shares[part + 1]) - Code(shares[part]);
            if (to > from)
                made.Add(Part.Of(from, to, rise));
        }

        parts = [.. made];
        Full = Code(tones[3]);
    }

    /// <summary>From this tone on all dots are set.</summary>
    public ushort Full { get; }

    /// <summary>The parts, to work on many tones at once: their sums, or all from <see cref="Full"/> on.</summary>
    public ReadOnlySpan<Part> Parts => parts;

    /// <summary>The share at a tone.</summary>
    public ushort Share(ushort tone)
    {
        if (tone >= Full)
            return ushort.MaxValue;
        uint share = 0;
        foreach (Part part in parts)
            share += part.Rise(tone);
        return (ushort)share;
    }

    /// <summary>Contone above which a dot with this threshold is set; 65535 where it never is.</summary>
    public ushort[] Limits()
    {
        ushort[] limits = new ushort[65536];
        int tone = 0;
        for (int threshold = 0; threshold < limits.Length; threshold++)
        {
            while (tone <= ushort.MaxValue && Share((ushort)tone) <= threshold)
                tone++;
            limits[threshold] = (ushort)Math.Min(tone - 1, ushort.MaxValue);
        }

        return limits;
    }

    private static ushort Code(double share) => (ushort)Math.Round(Math.Clamp(share, 0, 1) * ushort.MaxValue);

    /// <summary>One straight part: (min(tone, to) − from) × slope ÷ 2^16, slope as a 16-bit factor and a shift to the left.</summary>
    internal readonly record struct Part(ushort From, ushort To, ushort Factor, int Shift)
    {
        // The largest slope that does not overshoot.
        public static Part Of(ushort from, ushort to, int rise)
        {
            double slope = (double)rise / (to - from);
            int shift = 0;
            while (slope * 65536 / (1 << shift) > ushort.MaxValue)
                shift++;
            return new(from, to, (ushort)(slope * 65536 / (1 << shift)), shift);
        }

        public uint Rise(ushort tone) => (uint)((Math.Max(Math.Min(tone, To), From) - From) * (uint)Factor) >> (16 - Shift);
    }
}
