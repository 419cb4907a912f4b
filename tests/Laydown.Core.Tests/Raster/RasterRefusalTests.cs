using Laydown.Raster.Masks;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster;

public sealed class RasterRefusalTests
{
    [Fact]
    public void A_curve_that_falls_or_misses_its_ends_is_refused()
    {
        Assert.Throws<ArgumentException>(() => InkCurve.Through([0, 50, 40, 100], 100));
        Assert.Throws<ArgumentException>(() => InkCurve.Through([0, 50, 90], 100));
        Assert.Throws<ArgumentException>(() => InkCurve.Through([1, 100], 100));
        Assert.Throws<ArgumentException>(() => InkCurve.Through([100], 100));
        Assert.Throws<ArgumentException>(() => InkCurve.Through([0, double.NaN, 100], 100));
        Assert.Throws<ArgumentOutOfRangeException>(() => InkCurve.Through([0, 100], 101));
    }

    [Fact]
    public void Values_outside_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new LightInkSplit(1, 20, 80));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LightInkSplit(0.3, 0, 80));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TotalInkLimit(double.NaN, null));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Choke(5000));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Tile(0, 1, 1));
        Assert.Throws<ArgumentException>(() => new StageChain([]));
    }

    [Fact]
    public void A_stage_that_gets_another_number_of_inks_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new StageChain([new InkCurves([InkCurve.Straight(100)])]).TargetInks(2));
        Assert.Throws<ArgumentException>(() => new StageChain([new PickInks([4])]).TargetInks(4));
        Assert.Throws<ArgumentException>(() => new StageChain([new KnockOut()]).TargetInks(1));
        Assert.Throws<ArgumentException>(() => new StageChain([new Lightness(true)]).TargetInks(3));
        Assert.Throws<ArgumentException>(() => new StageChain([new PerInkLimit([100])]).TargetInks(3));
    }
}
