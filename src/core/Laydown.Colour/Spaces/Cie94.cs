namespace Laydown.Colour.Spaces;

/// <summary>The CIE94 colour difference with the constants of graphic arts: kL 1, K1 0.045, K2 0.015 [CIE15].</summary>
public static class Cie94
{
    /// <summary>ΔE*94 of a sample to its standard; the two are not the same when changed over, as chroma is the standard's.</summary>
    public static double Between(Lab standard, Lab sample)
    {
        double dl = standard.L - sample.L;
        double dc = standard.Chroma - sample.Chroma;
        double da = standard.A - sample.A, db = standard.B - sample.B;
        double dh2 = Math.Max(0, (da * da) + (db * db) - (dc * dc));
        double sc = 1 + (0.045 * standard.Chroma), sh = 1 + (0.015 * standard.Chroma);
        return Math.Sqrt((dl * dl) + (dc / sc * (dc / sc)) + (dh2 / (sh * sh)));
    }
}
