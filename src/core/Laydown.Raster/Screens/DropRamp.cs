namespace Laydown.Raster.Screens;

/// <summary>A share that rises with the tone in 64 straight parts of equal width: codes of 65535 in, codes of 65535 out.</summary>
internal sealed class DropRamp
{
    /// <summary>Parts: as many as one permute instruction looks up.</summary>
    public const int Parts = 64;

    /// <summary>Tones of one part.</summary>
    public const int Width = 65536 / Parts;

    private readonly ushort[] bases = new ushort[Parts];
    private readonly ushort[] rises = new ushort[Parts];

    /// <summary>A ramp.</summary>
    /// <param name="share">Share at a tone, both 0 to 1; rises from 0 to 1.</param>
    public DropRamp(Func<double, double> share)
    {
        for (int part = 0; part < Parts; part++)
            bases[part] = (ushort)Math.Round(Math.Clamp(share(part * Width / 65535.0), 0, 1) * ushort.MaxValue);
        for (int part = 0; part + 1 < Parts; part++)
            rises[part] = (ushort)(bases[part + 1] - bases[part]);

        // The last part has no next one: it ends at full, so that full contone sets every dot.
        while (Share(ushort.MaxValue) < ushort.MaxValue)
            rises[^1]++;
        Both = [.. bases.Zip(rises, (start, rise) => start | ((uint)rise << 16))];
    }

    /// <summary>Shares where the parts begin.</summary>
    public ReadOnlySpan<ushort> Bases => bases;

    /// <summary>By how much the share grows over a part.</summary>
    public ReadOnlySpan<ushort> Rises => rises;

    /// <summary>Base in the low 16 bits, rise in the high ones.</summary>
    public uint[] Both { get; }

    /// <summary>The share at a tone.</summary>
    public ushort Share(ushort tone)
    {
        int part = tone / Width;
        return (ushort)(bases[part] + (((uint)(tone % Width) * Parts * rises[part]) >> 16));
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
}
