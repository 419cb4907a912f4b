using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Screens;

public sealed class ScreenRefusalTests
{
    [Fact]
    public void Drops_must_be_one_to_three_that_rise_from_over_0()
    {
        foreach (double[] drops in (double[][])[[], [0], [-1, 2], [5, 5], [7, 6], [1, 2, 3, 4], [double.NaN], [1, double.PositiveInfinity]])
            Assert.ThrowsAny<ArgumentException>(() => new DropLevels(drops));
    }

    [Fact]
    public void A_layer_without_inks_is_refused() =>
        Assert.Throws<ArgumentException>(() => LayerScreens.Of([], DropLevels.One, ScreenKind.Arrays));

    [Fact]
    public void A_light_ink_needs_a_dark_one() =>
        Assert.Throws<ArgumentException>(() => LayerScreens.Of([new("light cyan", 0.3, 4)], DropLevels.One, ScreenKind.Arrays));

    [Fact]
    public void Tiles_that_do_not_start_on_whole_bytes_are_refused()
    {
        ILayerScreen screen = LayerScreens.Of(Screened.One, DropLevels.One, ScreenKind.Arrays);
        Tile tile = new(1, 1, 8);
        Assert.Throws<ArgumentException>(() => screen.Run(tile, 1, 8, new(1, 1, 16, 1), 3));
        tile.PlaceAt(0, 12);
        Assert.Throws<ArgumentException>(() => screen.Run(tile, 1, 8, new(1, 1, 16, 1), 0));
    }
}
