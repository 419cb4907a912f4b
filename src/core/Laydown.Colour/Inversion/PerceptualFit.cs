using Laydown.Colour.Gamuts;
using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>Fits the colours of pictures into a print: lightness as a whole, strong colours gently toward the grey axis.</summary>
/// <remarks>
/// Lightness: linear in tristimulus values, so that white stays and L* 0 becomes the print's darkest. Then, along the line to the grey
/// of middle lightness: what lies within <see cref="Knee"/> of the print's reach stays, what lies beyond is drawn in so that the edge of
/// the picture's gamut meets the edge of the print's. Near grey nothing is drawn in. Own construction after the idea of a knee
/// [CIE156]; the numbers are common practice, no source.
/// </remarks>
public sealed class PerceptualFit
{
    private const double Knee = 0.85;
    private const double FullChroma = 25;
    private readonly Gamut print, picture;
    private readonly double blackL;

    /// <summary>A fit from one gamut into another.</summary>
    /// <param name="picture">Gamut the pictures come from, media-relative.</param>
    /// <param name="print">Gamut of the print, media-relative.</param>
    /// <param name="blackL">L* of the darkest neutral of the print.</param>
    public PerceptualFit(Gamut picture, Gamut print, double blackL) => (this.picture, this.print, this.blackL) = (picture, print, blackL);

    /// <summary>Where a colour goes.</summary>
    public Lab Map(Lab colour)
    {
        Lab lifted = FitLightness(colour, blackL);
        double from = Math.Max(picture.ReachToward(colour), 1), to = print.ReachToward(lifted);
        double up = lifted.L - Gamut.MiddleL, radius = Math.Sqrt((up * up) + (lifted.Chroma * lifted.Chroma));
        if (from <= to || radius <= Knee * to)
            return lifted;

        // Beyond the knee the rest of the picture's reach shares what is left of the print's.
        double inner = Knee * to, drawn = inner + ((radius - inner) * (to - inner) / (from - inner));
        double strength = Math.Clamp(lifted.Chroma / FullChroma, 0, 1);
        double scale = 1 - ((1 - (Math.Min(drawn, radius) / radius)) * strength * strength * (3 - (2 * strength)));
        return new(Gamut.MiddleL + (up * scale), lifted.A * scale, lifted.B * scale);
    }

    /// <summary>Black point compensation: linear in tristimulus values, white stays, L* 0 becomes the print's darkest.</summary>
    public static Lab FitLightness(Lab colour, double blackL)
    {
        Xyz white = WhitePoints.Pcs;
        Xyz black = new Lab(blackL, 0, 0).ToXyz(white);
        double scale = 1 - (black.Y / white.Y);
        return Lab.From(colour.ToXyz(white).Times(scale).Plus(black), white);
    }
}
