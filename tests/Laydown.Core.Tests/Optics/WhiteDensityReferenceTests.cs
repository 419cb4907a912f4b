using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>The table of white densities, every column to its last digit, and the contrast ratio of a white by its S·X.</summary>
public sealed class WhiteDensityReferenceTests
{
    private static readonly double SurfacesAlone = 2 * 1.5 / ((1.5 * 1.5) + 1);

    [Fact]
    public void All_columns_of_the_table_come_out()
    {
        // The table has 6 decimals; half a unit of the last.
        IReadOnlyList<double[]> rows = PublishedTable.Rows("optics/white-density-tradeoff.csv");
        Assert.Equal(13, rows.Count);
        foreach (double[] row in rows)
        {
            (double clear, double night) = Seen(row[0], backing: 0.8, covered: 0);
            double black = Seen(row[0], backing: 0, covered: 0).Day, covered = Seen(row[0], backing: 0.8, covered: 1).Day;
            Assert.Equal(row[3], black, tolerance: 6e-7);
            Assert.Equal(row[4], clear, tolerance: 6e-7);
            Assert.Equal(row[5], covered, tolerance: 6e-7);
            Assert.Equal(row[6], Ciede2000.Between(Grey(clear), Grey(covered)), tolerance: 6e-7);
            Assert.Equal(row[7], Grey(covered).L, tolerance: 6e-7);
            Assert.Equal(row[8], night, tolerance: 6e-7);
        }
    }

    [Fact]
    public void Leak_and_night_light_fall_along_the_whole_wedge()
    {
        double lastLeak = double.MaxValue, lastNight = double.MaxValue;
        for (double scatter = 0.25; scatter <= 40; scatter *= 1.1)
        {
            (double clear, double night) = Seen(scatter, 0.8, 0);
            double leak = Ciede2000.Between(Grey(clear), Grey(Seen(scatter, 0.8, 1).Day));
            Assert.True(leak < lastLeak && night < lastNight);
            (lastLeak, lastNight) = (leak, night);
        }
    }

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
    public void Contrast_ratio_of_a_white_on_black_and_on_white_in_contact(double scatter, double ratio)
    {
        // At 45:0, n = 1.5, over 0 and over 0.8, K/S = 0.002; two decimals.
        LayerLight white = KubelkaMunk.Layer(0.002 * scatter, scatter);
        double black = Saunderson.SeenAt45(white.FrontReflectance, Boundary.Ink);
        double light = Saunderson.SeenAt45(white.Over(LayerLight.Symmetric(0.8, 0)).FrontReflectance, Boundary.Ink);
        Assert.Equal(ratio, black / light, tolerance: 0.005);
    }

    private static (double Day, double Night) Seen(double scatter, double backing, double covered)
    {
        // The black back of the table lets 0.03 through: its own notes do not say so, its column does, to the last digit in all 13 rows.
        StackOptics stack = new(
            LookSheet.Clear(SurfacesAlone),
            [new(LookFace.First, [LookInk.White(scatter, 0.002)]), new(LookFace.Second, [LookInk.Colour(Bands.Flat(-Math.Log10(0.03)))])],
            backing);
        double[] day = new double[36], night = new double[36];
        stack.SolveSpread([1, covered], day, night);
        return (day[20], night[20]);
    }

    private static Lab Grey(double reflectance) => Lab.From(WhitePoints.Pcs.Times(reflectance), WhitePoints.Pcs);
}
