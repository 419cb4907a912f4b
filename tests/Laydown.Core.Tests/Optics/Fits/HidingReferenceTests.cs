using Laydown.Colour.Spectra;
using Laydown.Optics.Fits;
using Xunit;

namespace Laydown.Core.Tests.Optics.Fits;

public sealed class HidingReferenceTests
{
    /// <summary>Contrast ratio of a white with K/S = 0.002, n = 1.5, computed for this project by another program; printed to two
    /// decimals, the tolerance is half the last.</summary>
    [Theory]
    [InlineData(1, 0.43)]
    [InlineData(2, 0.64)]
    [InlineData(3, 0.75)]
    [InlineData(4, 0.82)]
    [InlineData(5, 0.86)]
    [InlineData(6, 0.89)]
    [InlineData(8, 0.93)]
    [InlineData(10, 0.95)]
    [InlineData(12, 0.97)]
    [InlineData(15, 0.98)]
    [InlineData(20, 0.99)]
    public void Contrast_ratio_of_a_white_by_its_scatter(double scatter, double printed)
    {
        double[] k = Bands.Flat(0.002 * scatter), s = Bands.Flat(scatter);
        Assert.Equal(printed, Hiding.ContrastRatio(k, s, 1), 0.005);
        Assert.Equal(Hiding.ContrastRatio(k, s, 1), Hiding.ContrastRatio([.. k.Select(v => v / 4)], [.. s.Select(v => v / 4)], 4), 1e-12);
    }
}
