using Laydown.Colour.Inks;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Looks;
using Laydown.Optics.Prints;

namespace Laydown.Core.Tests.Optics;

/// <summary>What any stack must do, and what day/night panels are known to do.</summary>
public sealed class StackLookLawTests
{
    private static readonly LookInk[] Cmyk = [.. Enumerable.Range(0, 4).Select(i => LookInk.Colour(GenericUvInks.Density((ProcessInk)i)))];

    private static LookLayer[] Panel(double white = 8) =>
        [new(LookFace.First, Cmyk), new(LookFace.First, [LookInk.White(white)]), new(LookFace.First, Cmyk)];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_fast_row_equals_the_plain_spot_to_one_code(bool lit)
    {
        StackLook look = new(LookSheet.Clear(0.92), Panel(), lit ? Scene.Lit() : Scene.Day());
        const int width = 400;
        byte[] planes = new byte[9 * width], rgb = new byte[3 * width];
        for (int x = 0; x < width; x++)
        {
            for (int ink = 0; ink < 9; ink++)
                planes[(ink * width) + x] = (byte)(x % 7 == 0 ? 255 * (ink % 2) : 255 * Prints.Scatter((ink * width) + x)[1]);
            planes[(4 * width) + x] = (byte)(x % 3 == 0 ? 0 : x % 3 == 1 ? 255 : planes[(4 * width) + x]);
        }

        look.Row(planes, width, rgb);
        for (int x = 0; x < width; x++)
        {
            SeenColour spot = look.At([.. Enumerable.Range(0, 9).Select(ink => planes[(ink * width) + x] / 255.0)]);
            Assert.InRange(rgb[3 * x], spot.Red - 1, spot.Red + 1);
            Assert.InRange(rgb[(3 * x) + 1], spot.Green - 1, spot.Green + 1);
            Assert.InRange(rgb[(3 * x) + 2], spot.Blue - 1, spot.Blue + 1);
        }
    }

    [Fact]
    public void More_comes_out_of_no_stack_than_goes_in()
    {
        foreach (LookSheet sheet in new[] { LookSheet.Clear(0.92), LookSheet.Opal(0.4, 0.5), LookSheet.Opaque(0.9) })
        {
            foreach (double scatter in new[] { 0.01, 0.3, 2, 8, 60 })
            {
                StackOptics stack = new(sheet, Panel(scatter), backing: 0.8);
                double[] day = new double[36], night = new double[36];
                for (int i = 0; i < 30; i++)
                {
                    stack.Solve([.. Prints.Scatter(i), Prints.Scatter(i + 50)[0], .. Prints.Scatter(i + 100)], day, night);
                    Assert.All(day, r => Assert.InRange(r, 0, 1));
                    Assert.All(night, t => Assert.InRange(t, 0, 1));
                }
            }
        }
    }

    [Fact]
    public void A_bare_clear_sheet_lets_through_what_was_measured()
    {
        double[] day = new double[36], night = new double[36];
        new StackOptics(LookSheet.Clear(0.92), Panel(), backing: 0).Solve(new double[9], day, night);
        Assert.Equal(0.92, night[10], tolerance: 1e-12);
        Assert.Equal(0, day[10], tolerance: 1e-12);
    }

    [Fact]
    public void Print_on_an_opaque_stock_looks_as_the_print_model_says()
    {
        double[] day = new double[36], night = new double[36];
        StackOptics stack = new(LookSheet.Opaque(0.86), [new(LookFace.First, Cmyk)], backing: 0.5);
        for (int inks = 0; inks < 16; inks++)
        {
            stack.Solve([inks & 1, inks >> 1 & 1, inks >> 2 & 1, inks >> 3 & 1], day, night);
            for (int band = 0; band < 36; band++)
                Assert.Equal(Prints.Overprints[inks][band], day[band], tolerance: 1e-12);
            Assert.All(night, t => Assert.Equal(0, t));
        }
    }

    [Fact]
    public void A_black_back_leaves_the_day_picture_and_takes_the_night()
    {
        LookInk opaque = LookInk.Colour(Bands.Flat(9));
        StackOptics stack = new(LookSheet.Clear(0.92), [new(LookFace.First, [LookInk.White(8)]), new(LookFace.Second, [opaque])], backing: 0.8);
        double[] day = new double[36], night = new double[36], dayDark = new double[36];
        stack.Solve([1, 1], day, night);
        Assert.All(night, t => Assert.Equal(0, t, tolerance: 1e-6));
        new StackOptics(LookSheet.Clear(0.92), [new(LookFace.First, [LookInk.White(8)]), new(LookFace.Second, [opaque])], backing: 0)
            .Solve([1, 1], dayDark, night);
        Assert.Equal(dayDark[9], day[9], tolerance: 1e-6);
    }

    [Fact]
    public void More_white_leaks_less_and_lets_through_less()
    {
        double lastLeak = double.MaxValue, lastNight = double.MaxValue;
        foreach (double scatter in new[] { 2.0, 4, 8, 15, 30 })
        {
            StackOptics stack = new(LookSheet.Clear(0.92), Panel(scatter), backing: 0.8);
            double[] clear = new double[36], night = new double[36], covered = new double[36], dark = new double[36];
            stack.Solve([0, 0, 0, 0, 1, 0, 0, 0, 0], clear, night);
            stack.Solve([1, 1, 1, 1, 1, 0, 0, 0, 0], covered, dark);
            Assert.True(clear[20] - covered[20] < lastLeak && night[20] < lastNight);
            (lastLeak, lastNight) = (clear[20] - covered[20], night[20]);
        }
    }

    [Fact]
    public void Little_white_joins_on_to_none()
    {
        double[] none = new double[36], little = new double[36], night = new double[36], nightLittle = new double[36];
        new StackOptics(LookSheet.Clear(0.92), Panel(0.01), backing: 0.8).Solve([0.2, 0, 0, 0, 0, 0, 0, 0.4, 0], none, night);
        new StackOptics(LookSheet.Clear(0.92), Panel(0.01), backing: 0.8).Solve([0.2, 0, 0, 0, 0.1, 0, 0, 0.4, 0], little, nightLittle);
        for (int band = 0; band < 36; band++)
        {
            Assert.Equal(none[band], little[band], tolerance: 0.003);
            Assert.Equal(night[band], nightLittle[band], tolerance: 0.003);
        }
    }

    [Fact]
    public void Seen_from_the_other_face_a_symmetric_stack_looks_the_same()
    {
        LookLayer[] layers = [new(LookFace.First, Cmyk), new(LookFace.Second, Cmyk)];
        double[] one = [0.3, 0.1, 0, 0.2], other = [0, 0.7, 0.4, 0];
        StackLook first = new(LookSheet.Opal(0.4, 0.5), layers, Scene.Lit()), second = new(LookSheet.Opal(0.4, 0.5), layers, Scene.Lit(), LookFace.Second);
        Assert.Equal(first.At([.. one, .. other]).CdPerM2.Y, second.At([.. other, .. one]).CdPerM2.Y, tolerance: 1e-9);
    }

    [Fact]
    public void The_lit_piece_without_colour_is_white_to_the_adapted_eye()
    {
        SeenColour white = new StackLook(LookSheet.Clear(0.92), Panel(), Scene.Lit()).At([0, 0, 0, 0, 1, 0, 0, 0, 0]);
        Assert.Equal((255, 255, 255), (white.Red, white.Green, white.Blue));
        Assert.Equal(100, white.Lab.L, tolerance: 1e-9);

        // 3000 cd/m² through the 0.18355 of S·X 8 (tests/data/optics, white-density-tradeoff) are 551 cd/m²; a dim room adds 5 to 6.
        Assert.InRange(white.CdPerM2.Y, 540, 560);
    }

    [Fact]
    public void Room_light_does_not_change_the_day_picture() => Assert.Equal(
        new StackLook(LookSheet.Opaque(0.86), Panel(), Scene.Day(300)).At([0, 0, 0, 0, 1, 1, 0.5, 0, 0]).Lab.L,
        new StackLook(LookSheet.Opaque(0.86), Panel(), Scene.Day(3000)).At([0, 0, 0, 0, 1, 1, 0.5, 0, 0]).Lab.L, tolerance: 1e-9);

    [Fact]
    public void Wrong_lengths_and_mixed_layers_are_refused()
    {
        StackLook look = new(LookSheet.Clear(0.92), Panel(), Scene.Day());
        Assert.Throws<ArgumentException>(() => look.Row(new byte[8], 1, new byte[3]));
        Assert.Throws<ArgumentException>(() => look.At([1]));
        Assert.Throws<ArgumentException>(() => new LookLayer(LookFace.First, [Cmyk[0], LookInk.White(8)]));
        Assert.Throws<ArgumentException>(() => new LookLayer(LookFace.First, []));
        Assert.Equal(0.5, SolidPrint.Seen(SolidPrint.Inside(0.5, Laydown.Optics.Layers.Boundary.Ink), 1, Laydown.Optics.Layers.Boundary.Ink), tolerance: 1e-12);
    }
}
