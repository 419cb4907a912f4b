namespace Laydown.Colour.Spaces;

/// <summary>sRGB for screens [IEC61966-2-1].</summary>
public static class Srgb
{
    /// <summary>Encodes a colour relative to the sRGB white (Y = 100); what the screen cannot show is clipped channel by
    /// channel.</summary>
    public static (byte Red, byte Green, byte Blue) Encode(Xyz d65)
    {
        (double r, double g, double b) = Linear(d65);
        return (EncodeChannel(r), EncodeChannel(g), EncodeChannel(b));
    }

    /// <summary>Linear light of the three primaries, 0 to 1 inside the gamut of the screen.</summary>
    public static (double Red, double Green, double Blue) Linear(Xyz d65)
    {
        double x = d65.X / 100, y = d65.Y / 100, z = d65.Z / 100;
        return (
            (3.2406255 * x) - (1.5372080 * y) - (0.4986286 * z),
            (-0.9689307 * x) + (1.8757561 * y) + (0.0415175 * z),
            (0.0557101 * x) - (0.2040211 * y) + (1.0569959 * z));
    }

    /// <summary>The tristimulus values (white Y = 100, D65) of an encoded colour.</summary>
    public static Xyz Decode(byte red, byte green, byte blue)
    {
        double r = DecodeChannel(red), g = DecodeChannel(green), b = DecodeChannel(blue);
        return new(
            100 * ((0.4124 * r) + (0.3576 * g) + (0.1805 * b)),
            100 * ((0.2126 * r) + (0.7152 * g) + (0.0722 * b)),
            100 * ((0.0193 * r) + (0.1192 * g) + (0.9505 * b)));
    }

    /// <summary>Colour of encoded channels from 0 to 1, its white adapted to D50 as Lab 100, 0, 0.</summary>
    public static Lab ToLab(double red, double green, double blue)
    {
        double r = DecodeChannel(red), g = DecodeChannel(green), b = DecodeChannel(blue);
        Xyz d65 = new(
            100 * ((0.4124 * r) + (0.3576 * g) + (0.1805 * b)),
            100 * ((0.2126 * r) + (0.7152 * g) + (0.0722 * b)),
            100 * ((0.0193 * r) + (0.1192 * g) + (0.9505 * b)));
        Xyz white = new(95.05, 100, 108.9);
        return Lab.From(Bradford.Adapt(d65, white, WhitePoints.Pcs), WhitePoints.Pcs);
    }

    /// <summary>The code value of a linear channel, 0 to 255.</summary>
    public static byte EncodeChannel(double linear)
    {
        double c = Math.Clamp(linear, 0, 1);
        double encoded = c <= 0.0031308 ? 12.92 * c : (1.055 * Math.Pow(c, 1 / 2.4)) - 0.055;
        return (byte)Math.Round(255 * encoded, MidpointRounding.AwayFromZero);
    }

    /// <summary>The linear light of a code value, 0 to 1.</summary>
    public static double DecodeChannel(byte code) => DecodeChannel(code / 255.0);

    private static double DecodeChannel(double c)
    {
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
