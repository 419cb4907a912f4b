using Laydown.Colour.Curves;
using Laydown.Colour.Fits;

namespace Laydown.Core.Tests.Colour.Fits;

/// <summary>Curves of effective coverage.</summary>
public sealed class CoverageCurveLawTests
{
    private static readonly CoverageCurve Curve = new([0, 0.3, 0.3, 0.55, 0.9, 1]);

    [Fact]
    public void It_never_falls_and_its_slope_is_its_own()
    {
        double last = 0;
        for (int i = 0; i <= 1000; i++)
        {
            double value = Curve.At(i / 1000.0, out double slope);
            Assert.True(value >= last - 1e-12 && slope >= -1e-12);
            if (i is > 0 and < 1000 && i % 200 != 0)
                Assert.Equal((Curve.At((i / 1000.0) + 1e-6) - Curve.At((i / 1000.0) - 1e-6)) / 2e-6, slope, 1e-4);
            last = value;
        }
    }

    [Fact]
    public void Ink_for_a_coverage_gives_it_back()
    {
        for (int i = 0; i <= 100; i++)
            Assert.Equal(i / 100.0, Curve.At(Curve.InkFor(i / 100.0)), 1e-9);
    }

    [Fact]
    public void Values_that_fall_or_miss_the_ends_are_a_mistake()
    {
        Assert.Throws<ArgumentException>(() => new CoverageCurve([0, 0.5, 0.4, 1]));
        Assert.Throws<ArgumentException>(() => new CoverageCurve([0, 0.5]));
    }
}
