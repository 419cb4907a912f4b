using Laydown.Colour.Inks;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Stacks whose colours scatter too.</summary>
public sealed class TurbidColourLawTests
{
    private static readonly LookInk[] Clear = [.. Enumerable.Range(0, 4).Select(i => LookInk.Colour(GenericUvInks.Density((ProcessInk)i)))];

    private static LookInk[] Turbid(double scatter) =>
        [.. Enumerable.Range(0, 4).Select(i => LookInk.TurbidColour(GenericUvInks.Density((ProcessInk)i), Bands.Flat(scatter * (i + 1))))];

    public static IEnumerable<TheoryDataRow<bool, bool, double>> Cases() =>
        from white in new[] { true, false }
        from clear in new[] { true, false }
        from n in new[] { 1, 2.5, double.PositiveInfinity }
        select new TheoryDataRow<bool, bool, double>(white, clear, n);

    [Theory, MemberData(nameof(Cases))]
    public void The_fast_row_equals_the_plain_spot_to_one_code(bool white, bool clear, double n)
    {
        LookLayer[] layers = white
            ? [new(LookFace.First, Turbid(0.05)), new(LookFace.First, [LookInk.White(2)]), new(LookFace.First, Turbid(0.1))]
            : [new(LookFace.First, Turbid(0.05)), new(LookFace.Second, Turbid(0.1))];
        LookSheet sheet = clear ? LookSheet.Clear(0.92) : LookSheet.Opal(0.4, 0.5);
        StackLook look = new(sheet, layers, n == 1 ? Scene.Lit() : Scene.Day(), yuleNielsen: n);
        const int width = 200;
        byte[] planes = new byte[look.InkCount * width], rgb = new byte[3 * width];
        for (int i = 0; i < planes.Length; i++)
            planes[i] = (byte)(i % 5 == 0 ? 255 * (i % 2) : 255 * Prints.Scatter(i)[1]);

        look.Row(planes, width, rgb);
        for (int x = 0; x < width; x++)
        {
            SeenColour spot = look.At([.. Enumerable.Range(0, look.InkCount).Select(ink => planes[(ink * width) + x] / 255.0)]);
            Assert.InRange(rgb[3 * x], spot.Red - 1, spot.Red + 1);
            Assert.InRange(rgb[(3 * x) + 1], spot.Green - 1, spot.Green + 1);
            Assert.InRange(rgb[(3 * x) + 2], spot.Blue - 1, spot.Blue + 1);
        }
    }

    [Fact]
    public void A_colour_that_scatters_shows_over_black()
    {
        double[] day = new double[36], night = new double[36];
        Stack(Turbid(0.1)).Solve([0, 0, 1, 0], day, night);
        double seen = day[30];
        Stack(Clear).Solve([0, 0, 1, 0], day, night);
        Assert.InRange(seen, 0.05, 0.5);
        Assert.Equal(0, day[30], tolerance: 1e-12);
    }

    [Fact]
    public void Scatter_that_goes_to_nothing_joins_on_to_the_clear_film_behind_a_white()
    {
        // Between whites a clear film is crossed as a layer, which is what a colour that hardly scatters is.
        double[] one = new double[36], other = new double[36], night = new double[36], nightOther = new double[36];
        double[] spot = [1, 0.3, 0.7, 0, 0.1, 1];
        foreach (bool clear in new[] { true, false })
        {
            StackOptics Between(LookInk[] inks) => new(
                clear ? LookSheet.Clear(0.92) : LookSheet.Opal(0.4, 0.5),
                [new(LookFace.First, [LookInk.White(3)]), new(LookFace.First, inks), new(LookFace.First, [LookInk.White(2)])],
                backing: 0.8);
            Between(Clear).Solve(spot, one, night);
            Between(Turbid(1e-9)).Solve(spot, other, nightOther);
            for (int band = 0; band < 36; band++)
            {
                Assert.Equal(one[band], other[band], tolerance: 1e-8);
                Assert.Equal(night[band], nightOther[band], tolerance: 1e-8);
            }
        }
    }

    [Fact]
    public void A_factor_without_end_is_the_limit_of_large_ones()
    {
        foreach (LookInk[] inks in new[] { Clear, Turbid(0.1) })
        {
            double[] one = new double[36], other = new double[36], night = new double[36];
            Stack(inks, 1e6).Solve([0.5, 0.3, 0.7, 0.1], one, night);
            Stack(inks, double.PositiveInfinity).Solve([0.5, 0.3, 0.7, 0.1], other, night);
            for (int band = 0; band < 36; band++)
                Assert.Equal(one[band], other[band], tolerance: 1e-5);
        }
    }

    [Fact]
    public void More_comes_out_of_no_stack_than_goes_in()
    {
        foreach (double scatter in new[] { 0.01, 0.3, 5 })
        {
            StackOptics stack = new(
                LookSheet.Clear(0.92), [new(LookFace.First, Turbid(scatter)), new(LookFace.Second, Turbid(scatter))], 0.8, yuleNielsen: 2);
            double[] day = new double[36], night = new double[36];
            for (int i = 0; i < 30; i++)
            {
                stack.Solve([.. Prints.Scatter(i), .. Prints.Scatter(i + 100)], day, night);
                Assert.All(day, r => Assert.InRange(r, 0, 1));
                Assert.All(night, t => Assert.InRange(t, 0, 1));
            }
        }
    }

    [Fact]
    public void Scatter_under_nothing_is_refused()
    {
        Assert.Throws<ArgumentException>(() => LookInk.TurbidColour(Bands.Flat(1), Bands.Flat(-0.1)));
        Assert.Throws<ArgumentException>(() => LookInk.TurbidColour(Bands.Flat(1), [1, 2]));
        Assert.False(LookInk.TurbidColour(Bands.Flat(1), Bands.Flat(0)).Scatters);
    }

    private static StackOptics Stack(LookInk[] inks, double n = 1) =>
        new(LookSheet.Clear(0.92), [new(LookFace.First, inks)], backing: 0, yuleNielsen: n);
}
