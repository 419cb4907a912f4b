using Laydown.Colour.Spaces;

namespace Laydown.Core.Tests.Colour;

/// <summary>There and back, ends and continuity of the colour spaces.</summary>
public sealed class SpacesLawTests
{
    [Fact]
    public void Lab_goes_there_and_back_over_the_knee()
    {
        foreach (double l in new[] { 0.0, 1, 7.99, 8, 8.01, 50, 100, 130 })
        {
            Lab lab = new(l, 0.3 * l, -0.2 * l);
            Lab back = Lab.From(lab.ToXyz(WhitePoints.Pcs), WhitePoints.Pcs);
            Assert.Equal(lab.L, back.L, tolerance: 1e-10);
            Assert.Equal(lab.A, back.A, tolerance: 1e-10);
            Assert.Equal(lab.B, back.B, tolerance: 1e-10);
        }
    }

    [Fact]
    public void The_white_is_100_and_neutral()
    {
        Lab white = Lab.From(WhitePoints.Srgb, WhitePoints.Srgb);
        Assert.Equal(100, white.L, tolerance: 1e-12);
        Assert.Equal(0, white.Chroma, tolerance: 1e-12);
    }

    [Fact]
    public void The_steepness_is_the_slope_of_Lab()
    {
        Xyz at = new(12, 10, 4), white = WhitePoints.Pcs, steep = Lab.Steepness(at, white);
        const double step = 1e-5;
        double l = (Lab.From(new(at.X, at.Y + step, at.Z), white).L - Lab.From(at, white).L) / step;
        double b = (Lab.From(new(at.X, at.Y, at.Z + step), white).B - Lab.From(at, white).B) / step;
        Assert.Equal(l, 116 * steep.Y, tolerance: 1e-5);
        Assert.Equal(b, -200 * steep.Z, tolerance: 1e-4);
    }

    [Fact]
    public void Bradford_from_D65_to_D50_is_the_printed_matrix()
    {
        // B. Lindbloom, Chromatic Adaptation, D65 → D50, Bradford, 7 decimals; whites 0.95047, 1, 1.08883 and 0.96422, 1, 0.82521.
        double[] printed = [1.0478112, 0.0228866, -0.0501270, 0.0295424, 0.9904844, -0.0170491, -0.0092345, 0.0150436, 0.7521316];
        Xyz from = new(95.047, 100, 108.883), to = new(96.422, 100, 82.521);
        Xyz[] columns = [Bradford.Adapt(new(1, 0, 0), from, to), Bradford.Adapt(new(0, 1, 0), from, to), Bradford.Adapt(new(0, 0, 1), from, to)];
        for (int column = 0; column < 3; column++)
        {
            Assert.Equal(printed[column], columns[column].X, tolerance: 1e-6);
            Assert.Equal(printed[3 + column], columns[column].Y, tolerance: 1e-6);
            Assert.Equal(printed[6 + column], columns[column].Z, tolerance: 1e-6);
        }
    }

    [Fact]
    public void Adaptation_moves_white_to_white_and_back()
    {
        Xyz there = Bradford.Adapt(new(30, 20, 10), WhitePoints.Pcs, WhitePoints.Srgb);
        Xyz back = Bradford.Adapt(there, WhitePoints.Srgb, WhitePoints.Pcs);
        Assert.Equal(30, back.X, tolerance: 1e-10);
        Assert.Equal(20, back.Y, tolerance: 1e-10);
        Assert.Equal(10, back.Z, tolerance: 1e-10);
        Assert.Equal(WhitePoints.Srgb.Z, Bradford.Adapt(WhitePoints.Pcs, WhitePoints.Pcs, WhitePoints.Srgb).Z, tolerance: 1e-10);
    }

    [Fact]
    public void Every_sRGB_code_comes_back()
    {
        for (int code = 0; code < 256; code++)
            Assert.Equal(code, Srgb.EncodeChannel(Srgb.DecodeChannel((byte)code)));
    }

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(255, 255, 255)]
    [InlineData(255, 0, 0)]
    [InlineData(12, 200, 99)]
    public void Colours_of_the_screen_go_there_and_back(byte red, byte green, byte blue) =>
        Assert.Equal((red, green, blue), Srgb.Encode(Srgb.Decode(red, green, blue)));
}
