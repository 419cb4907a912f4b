using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Readings of layers turned into K and S and back.</summary>
public sealed class TurbidReadingLawTests
{
    public static IEnumerable<TheoryDataRow<double, double>> Layers() =>
        from k in new[] { 0, 1e-6, 0.002, 0.05, 0.7, 2 }
        from s in new[] { 0, 0.01, 0.4, 3, 12 }
        where k + s > 0
        select new TheoryDataRow<double, double>(k, s);

    [Theory, MemberData(nameof(Layers))]
    public void A_free_film_tells_its_amounts(double absorption, double scatter)
    {
        LayerLight film = KubelkaMunk.Layer(absorption, scatter);
        Same(absorption, scatter, TurbidReading.OfFilm(film.FrontReflectance, film.Inward), 1e-9);
    }

    [Theory, MemberData(nameof(Layers))]
    public void Two_bases_tell_the_amounts(double absorption, double scatter)
    {
        LayerLight film = KubelkaMunk.Layer(absorption, scatter);
        double Over(double g) => film.Over(LayerLight.Symmetric(g, 0)).FrontReflectance;
        Same(absorption, scatter, TurbidReading.OverBlackAndBase(Over(0), Over(0.85), 0.85), 1e-7);
        Same(absorption, scatter, TurbidReading.OverTwoBases(Over(0.04), 0.04, Over(0.85), 0.85), 1e-7);
    }

    [Theory, MemberData(nameof(Layers))]
    public void The_textbook_forms_of_the_inverse_agree(double absorption, double scatter)
    {
        // a = (R + (R0 − R + Rg)/(R0·Rg))/2, S·X = arcoth((1 − a·R0)/(b·R0))/b, T = √((a − R0)² − b²)
        // [Kubelka1948]; they need K and S over 0.
        if (absorption < 1e-3 || scatter == 0)
            return;
        LayerLight film = KubelkaMunk.Layer(absorption, scatter);
        double r0 = film.FrontReflectance, g = 0.8, r = film.Over(LayerLight.Symmetric(g, 0)).FrontReflectance;
        double a = (r + ((r0 - r + g) / (r0 * g))) / 2, b = Math.Sqrt((a * a) - 1);
        double y = (1 - (a * r0)) / (b * r0);
        TurbidAmount found = TurbidReading.OverBlackAndBase(r0, r, g);
        Assert.Equal(Math.Log((y + 1) / (y - 1)) / 2 / b, found.Scatter, tolerance: 1e-6 * (1 + scatter));
        Assert.Equal(found.Scatter * (a - 1), found.Absorption, tolerance: 1e-6 * (1 + absorption));
        Assert.Equal(Math.Sqrt(((a - r0) * (a - r0)) - (b * b)), film.Inward, tolerance: 1e-7);
    }

    [Theory, MemberData(nameof(Layers))]
    public void The_hyperbolic_forms_agree(double absorption, double scatter)
    {
        // R = sinh(bSX)/(a·sinh + b·cosh), T = b/(a·sinh + b·cosh) [Kubelka1948].
        if (absorption == 0 || scatter == 0)
            return;
        double a = 1 + (absorption / scatter), b = Math.Sqrt((absorption / scatter) * (a + 1)), x = b * scatter;
        double below = (a * Math.Sinh(x)) + (b * Math.Cosh(x));
        LayerLight film = KubelkaMunk.Layer(absorption, scatter);
        Assert.Equal(Math.Sinh(x) / below, film.FrontReflectance, tolerance: 1e-14);
        Assert.Equal(b / below, film.Inward, tolerance: 1e-14);
    }

    [Fact]
    public void Amounts_add_as_layers_of_one_paint_do()
    {
        TurbidAmount one = new(0.2, 1.5);
        LayerLight stacked = one.Layer.Over(one.Times(2.5).Layer);
        Assert.Equal(stacked.FrontReflectance, one.Times(3.5).Layer.FrontReflectance, tolerance: 1e-14);
        Assert.Equal(new TurbidAmount(0.5, 1.5), one.Plus(new(0.3, 0)));
    }

    private static void Same(double absorption, double scatter, TurbidAmount found, double tolerance)
    {
        // A layer that scatters nothing leaves nothing to divide K by: its digits are those of R.
        Assert.Equal(absorption, found.Absorption, tolerance * (1 + absorption + scatter));
        Assert.Equal(scatter, found.Scatter, tolerance * (1 + absorption + scatter) * (1 + scatter));
    }
}
