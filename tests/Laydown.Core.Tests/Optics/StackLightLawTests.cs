using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Light of room and lamp apart: each is what the spectra say, and together they are the look.</summary>
public sealed class StackLightLawTests
{
    private static readonly LookInk[] Cmyk = [.. Enumerable.Range(0, 4).Select(i => LookInk.Colour(GenericUvInks.Density((ProcessInk)i)))];
    private static readonly LookLayer[] Panel = [new(LookFace.First, Cmyk), new(LookFace.First, [LookInk.White(8)]), new(LookFace.First, Cmyk)];

    [Fact]
    public void Room_and_lamp_apart_equal_what_the_spectra_give()
    {
        StackLight light = new(LookSheet.Clear(0.92), Panel, Illuminant.D50, Illuminant.LedB4, 0.8);
        StackOptics optics = new(LookSheet.Clear(0.92), Panel, 0.8);
        SpectralWeights room = SpectralWeights.For(Illuminant.D50), lamp = SpectralWeights.For(Illuminant.LedB4);
        const int width = 60;
        byte[] planes = Planes(width);
        float[] day = new float[3 * width], night = new float[3 * width];
        light.Row(planes, width, day, night);
        double[] r = new double[36], t = new double[36];
        for (int x = 0; x < width; x++)
        {
            optics.Solve([.. Enumerable.Range(0, 9).Select(ink => planes[(ink * width) + x] / 255.0)], r, t);

            // Single precision against double: the fast way of the look is held to one code of 255 elsewhere; here to 2e-5 of a white.
            AssertNear(Linear(room.Of(r), room.White), day, x, 2e-5);
            AssertNear(Linear(lamp.Of(t), room.White), night, x, 2e-5);
        }
    }

    [Fact]
    public void The_sum_of_both_is_the_look_in_any_mix_of_light()
    {
        const int width = 60;
        byte[] planes = Planes(width);
        StackLight light = new(LookSheet.Clear(0.92), Panel, Illuminant.D50, Illuminant.D50, 0.8);
        Scene scene = new(120, Illuminant.D50, 900, Illuminant.D50, 0.8);
        StackLook look = new(LookSheet.Clear(0.92), Panel, scene);
        float[] day = new float[3 * width], night = new float[3 * width];
        light.Row(planes, width, day, night);
        for (int x = 0; x < width; x++)
        {
            double y = look.At([.. Enumerable.Range(0, 9).Select(ink => planes[(ink * width) + x] / 255.0)]).CdPerM2.Y;
            double mixed = (120 / Math.PI * Luminance(day, x)) + (900 * Luminance(night, x));
            // The matrix back from the screen's primaries is printed to four decimals.
            Assert.Equal(y, mixed, tolerance: 5e-4 * (y + 1));
        }
    }

    [Fact]
    public void A_row_cut_in_two_gives_the_same_values()
    {
        StackLight light = new(LookSheet.Opal(0.4, 0.4), Panel, Illuminant.D50, Illuminant.LedB3, 0.8);
        byte[] planes = Planes(40);
        float[] whole = new float[120], lit = new float[120], part = new float[60], partLit = new float[60];
        light.Row(planes, 40, whole, lit);
        byte[] second = [.. Enumerable.Range(0, 9).SelectMany(ink => planes[((ink * 40) + 20)..((ink * 40) + 40)])];
        light.Row(second, 20, part, partLit);
        Assert.Equal(whole[60..], part);
        Assert.Equal(lit[60..], partLit);
    }

    [Fact]
    public void Wrong_lengths_are_refused() => Assert.Throws<ArgumentException>(() =>
        new StackLight(LookSheet.Clear(0.92), Panel, Illuminant.D50, Illuminant.LedB4, 0.8).Row(new byte[8], 1, new float[3], new float[3]));

    private static byte[] Planes(int width)
    {
        byte[] planes = new byte[9 * width];
        for (int at = 0; at < planes.Length; at++)
            planes[at] = (byte)(255 * Prints.Scatter(at)[at % 4]);
        return planes;
    }

    // Bradford moves the luminance of what is coloured, so it is undone before luminances are compared.
    private static double Luminance(float[] rgb, int x)
    {
        (double r, double g, double b) = (rgb[3 * x], rgb[(3 * x) + 1], rgb[(3 * x) + 2]);
        Xyz d65 = new((0.4124 * r) + (0.3576 * g) + (0.1805 * b), (0.2126 * r) + (0.7152 * g) + (0.0722 * b), (0.0193 * r) + (0.1192 * g) + (0.9505 * b));
        Xyz white = SpectralWeights.For(Illuminant.D50).White;
        return Bradford.Adapt(d65, WhitePoints.Srgb.Times(0.01), white.Times(1 / white.Y)).Y;
    }

    private static (double Red, double Green, double Blue) Linear(Xyz light, Xyz white) => Srgb.Linear(Bradford.Adapt(light, white, WhitePoints.Srgb));

    private static void AssertNear((double Red, double Green, double Blue) wanted, float[] found, int x, double tolerance)
    {
        Assert.Equal(wanted.Red, found[3 * x], tolerance);
        Assert.Equal(wanted.Green, found[(3 * x) + 1], tolerance);
        Assert.Equal(wanted.Blue, found[(3 * x) + 2], tolerance);
    }
}
