using Laydown.Plan.Log;
using Xunit;

namespace Laydown.Core.Tests.Log;

/// <summary>The curves behind intervals and charts, where they have a closed form.</summary>
public sealed class CurveLawTests
{
    [Fact]
    public void The_gamma_function_of_whole_numbers_is_the_factorial_before_and_that_of_a_half_the_root_of_pi()
    {
        double log = 0;
        for (int n = 1; n <= 100; log += Math.Log(n), n++)
            Assert.Equal(log, GammaFunction.Log(n), 1e-11 * Math.Max(1, log));
        Assert.Equal(0.5 * Math.Log(Math.PI), GammaFunction.Log(0.5), 1e-13);
    }

    [Theory]
    [InlineData(0.6), InlineData(0.9), InlineData(0.95), InlineData(0.995), InlineData(0.05)]
    public void T_with_one_two_and_four_degrees_of_freedom_is_the_closed_form(double p)
    {
        Assert.Equal(Math.Tan(Math.PI * (p - 0.5)), StudentT.Value(p, 1), 1e-9 * Math.Abs(StudentT.Value(p, 1)));
        double a = 4 * p * (1 - p);
        Assert.Equal(2 * (p - 0.5) * Math.Sqrt(2 / a), StudentT.Value(p, 2), 1e-10);
        double q = Math.Cos(Math.Acos(Math.Sqrt(a)) / 3) / Math.Sqrt(a);
        Assert.Equal(Math.Sign(p - 0.5) * 2 * Math.Sqrt(q - 1), StudentT.Value(p, 4), 1e-9);
    }

    [Fact]
    public void T_goes_there_and_back_and_nears_the_normal_curve()
    {
        foreach (double freedom in new[] { 1, 2.5, 4, 17, 300 })
            for (double p = 0.02; p < 1; p += 0.07)
                Assert.Equal(p, StudentT.Chance(StudentT.Value(p, freedom), freedom), 1e-10);
        for (double z = -4; z <= 4; z += 0.25)
            Assert.Equal(NormalCurve.Chance(z), StudentT.Chance(z, 1e7), 1e-6);
    }

    [Fact]
    public void The_normal_curve_adds_up_to_one_and_its_middle_to_the_sum_of_its_slices()
    {
        double sum = 0;
        const double step = 1.0 / 1024;
        for (int i = 0; i < 2048; i++)
            sum += Math.Exp(-Math.Pow((i + 0.5) * step, 2) / 2) / Math.Sqrt(2 * Math.PI) * step;
        Assert.Equal(0.5 + sum, NormalCurve.Chance(2), 1e-6);
        for (double z = 0; z < 8; z += 0.5)
            Assert.Equal(1, NormalCurve.Chance(z) + NormalCurve.Chance(-z), 1e-14);
    }
}
