using Laydown.Optics.Layers;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Whites with faces against light followed direction by direction: what docs/decisions/0007 states of them.</summary>
public sealed class ThinWhiteReferenceTests
{
    private static readonly double SurfacesAlone = 2 * 1.5 / ((1.5 * 1.5) + 1);

    /// <summary>S·X, largest error for g = 0.6, the same for g = 0 and 0.85: of R over black, of R before 0.8 and of T.</summary>
    public static IEnumerable<TheoryDataRow<double, double, double>> Whites() =>
    [
        new(0.05, 0.01, 0.02), new(0.1, 0.01, 0.03), new(0.25, 0.01, 0.05), new(0.5, 0.01, 0.06), new(0.75, 0.01, 0.05), new(1, 0.01, 0.04),
        new(1.5, 0.01, 0.02), new(2, 0.01, 0.02), new(3, 0.03, 0.03), new(4, 0.03, 0.03), new(8, 0.02, 0.02), new(20, 0.01, 0.01),
    ];

    [Theory, MemberData(nameof(Whites))]
    public void Straight_and_spread_light_mix_as_radiative_transfer_says(double scatter, double usual, double other)
    {
        StackOptics Over(double backing) => new(
            LookSheet.Clear(SurfacesAlone), [new(LookFace.First, [LookInk.White(scatter)])], backing);
        double[] black = new double[36], white = new double[36], night = new double[36];
        Over(0).Solve([1], black, night);
        Over(0.8).Solve([1], white, night);
        foreach (double g in new[] { 0, 0.6, 0.85 })
        {
            SlabReading truth = SlabLight.Of(SlabMatter.From(new TurbidAmount(0.002 * scatter, scatter), g), Boundary.Ink);
            double tolerance = g == 0.6 ? usual : other;
            Assert.Equal(truth.ReflectanceAt45, black[20], tolerance);
            Assert.Equal(truth.Before(0.8), white[20], tolerance);
            Assert.Equal(truth.NormalTransmittance, night[20], tolerance);
        }
    }

    [Fact]
    public void The_share_of_straight_light_at_every_node_is_the_mean_of_what_R_and_T_ask_for()
    {
        // Solve = s·slab + (1 − s)·spread: s follows from R, as a slab over black sends nothing back at 45:0.
        for (int node = 1; node <= 16; node++)
        {
            double scatter = node / 8.0;
            StackOptics stack = new(LookSheet.Clear(SurfacesAlone), [new(LookFace.First, [LookInk.White(scatter)])], backing: 0);
            double[] mixed = new double[36], spread = new double[36], night = new double[36], nightSpread = new double[36];
            stack.Solve([1], mixed, night);
            stack.SolveSpread([1], spread, nightSpread);
            SlabReading truth = SlabLight.Of(SlabMatter.From(new TurbidAmount(0.002 * scatter, scatter), 0.6), Boundary.Ink);
            double asked = 1 - (truth.ReflectanceAt45 / spread[20]);
            double askedByT = (truth.NormalTransmittance - nightSpread[20]) / (SurfacesAlone - nightSpread[20]);
            Assert.Equal((asked + askedByT) / 2, 1 - (mixed[20] / spread[20]), tolerance: 2e-4);
        }
    }

    [Fact]
    public void The_share_falls_without_a_step()
    {
        double last = 1;
        for (double scatter = 0.01; scatter < 13; scatter += 0.01)
        {
            double share = Share(scatter);
            Assert.InRange(share, last - 0.03, last);
            last = share;
        }

        Assert.Equal(0, last, tolerance: 1e-9);
    }

    private static double Share(double scatter)
    {
        StackOptics stack = new(LookSheet.Clear(SurfacesAlone), [new(LookFace.First, [LookInk.White(scatter)])], backing: 0);
        double[] mixed = new double[36], spread = new double[36], night = new double[36];
        stack.Solve([1], mixed, night);
        stack.SolveSpread([1], spread, night);
        return 1 - (mixed[20] / spread[20]);
    }
}
