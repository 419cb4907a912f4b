namespace Laydown.Raster.Passes;

/// <summary>What errors of placement do to a tone, because dots are larger than their places.</summary>
/// <remarks>
/// Dots are taken as discs of √2 times the pitch, the smallest that close a solid: π/2 of a place each (common practice, no source). Dots
/// asked for at a share n cover
/// g = 1 − (1 − n)^(π/2), so a change of n by the share e changes the tone by e · n · π/2 · (1 − n)^(π/2 − 1): g in light tones, none in
/// a solid, whose dots already overlap.
/// A gap wider than the √2 − 1 rows that dots reach beyond their places shows the sheet whatever the tone.
/// </remarks>
internal static class DotTones
{
    /// <summary>Rows that dots reach beyond their own.</summary>
    public const double Overlap = 0.41421356237309515;

    private const double DotArea = Math.PI / 2;

    /// <summary>Change of tone for a change of the dots by a small share, for a tone of 0 to 1.</summary>
    public static double OfError(double tone)
    {
        double bare = Math.Pow(1 - tone, 1 / DotArea);
        return DotArea * (1 - bare) * Math.Pow(bare, DotArea - 1);
    }

    /// <summary>Change of tone for each row of a gap beyond the overlap.</summary>
    public static double OfGap(double tone) => tone;

    /// <summary>Change of tone for dots that fall on dots of the other direction.</summary>
    public static double OfRegister(double tone) => tone * OfError(tone);

    /// <summary>Change of tone for a row that is not printed; a solid closes it from both sides by what its dots reach.</summary>
    /// <param name="tone">The tone, 0 to 1.</param>
    /// <param name="mended">Whether neighbours take over what they have room for: six rows have room for tones to 6/7.</param>
    public static double OfLost(double tone, bool mended)
    {
        double lost = mended ? Math.Max(0, (((NozzleMend.Rings * 2) + 1) * tone) - (NozzleMend.Rings * 2)) : tone;
        return lost * (1 - (Overlap * tone));
    }

    /// <summary>The part of an error that overlap takes up.</summary>
    public static double Small(double error) => Math.Max(error, -Overlap);

    /// <summary>The part of an error that is a gap beyond the overlap, 0 or less.</summary>
    public static double Gap(double error) => Math.Min(0, error + Overlap);
}
