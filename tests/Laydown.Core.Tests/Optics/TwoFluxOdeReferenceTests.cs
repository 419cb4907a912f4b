using Laydown.Optics.Layers;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Layers against the differential equations of the two fluxes, solved step by step by a general-purpose library.</summary>
/// <remarks>dI/dx = −(K + S)I + S·J, dJ/dx = (K + S)J − S·I [Kubelka1948], with I = 1 at the front and J = 0 at the back.</remarks>
public sealed class TwoFluxOdeReferenceTests
{
    private const int Steps = 4_000;

    public static IEnumerable<TheoryDataRow<double, double>> Layers() =>
        from k in new[] { 0, 0.002, 0.1, 1.5 } from s in new[] { 0, 0.05, 1, 8 } select new TheoryDataRow<double, double>(k, s);

    [Theory, MemberData(nameof(Layers))]
    public void An_even_layer_solves_the_equations(double absorption, double scatter)
    {
        // Runge–Kutta of fourth order in 4000 steps: an error of (8/4000)⁴ of each step's change, under 1e-10 in all.
        (double r, double t) = Integrated(_ => absorption, _ => scatter);
        LayerLight layer = KubelkaMunk.Layer(absorption, scatter);
        Assert.Equal(layer.FrontReflectance, r, tolerance: 1e-9);
        Assert.Equal(layer.Inward, t, tolerance: 1e-9);
    }

    public static IEnumerable<TheoryDataRow<int>> Grades() => [new(0), new(1), new(2)];

    [Theory, MemberData(nameof(Grades))]
    public void A_graded_layer_is_many_thin_ones_laid_over_each_other(int grade)
    {
        (Func<double, double> k, Func<double, double> s) = Graded(grade);
        LayerLight stack = LayerLight.Empty;
        const int layers = 4000;
        for (int i = 0; i < layers; i++)
            stack = stack.Over(KubelkaMunk.Layer(k((i + 0.5) / layers) / layers, s((i + 0.5) / layers) / layers));

        // The midpoint of a slice stands for it: the error falls with the square of its thickness, about 1/(24·4000²) times the curvature.
        (double front, double forth) = Integrated(k, s);
        (double back, double outward) = Integrated(x => k(1 - x), x => s(1 - x));
        Assert.Equal(front, stack.FrontReflectance, tolerance: 1e-6);
        Assert.Equal(back, stack.BackReflectance, tolerance: 1e-6);
        Assert.Equal(forth, stack.Inward, tolerance: 1e-6);
        Assert.Equal(outward, stack.Outward, tolerance: 1e-6);
        Assert.Equal(forth, outward, tolerance: 1e-9);
        Assert.True(Math.Abs(front - back) > 0.01);
    }

    private static (Func<double, double> K, Func<double, double> S) Graded(int grade) => grade switch
    {
        0 => (x => 0.8 * x, _ => 3),
        1 => (_ => 0.05, x => 6 * x * x),
        _ => (x => 0.3 + (0.3 * Math.Sin(9 * x)), x => 5 * Math.Exp(-3 * x)),
    };

    // Two runs from the front, one for each flux; the sum whose J is 0 at the back is the light in the layer.
    private static (double Reflectance, double Transmittance) Integrated(Func<double, double> absorption, Func<double, double> scatter)
    {
        Vector<double> Slope(double x, Vector<double> flux)
        {
            double k = absorption(x), s = scatter(x);
            return Vector<double>.Build.DenseOfArray([(-(k + s) * flux[0]) + (s * flux[1]), ((k + s) * flux[1]) - (s * flux[0])]);
        }

        Vector<double> End(double down, double up) =>
            RungeKutta.FourthOrder(Vector<double>.Build.DenseOfArray([down, up]), 0, 1, Steps, Slope)[^1];
        Vector<double> fromDown = End(1, 0), fromUp = End(0, 1);
        double reflectance = -fromDown[1] / fromUp[1];
        return (reflectance, fromDown[0] + (reflectance * fromUp[0]));
    }
}
