using Xunit;
using Laydown.Press.Cure;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Core.Tests.Press;

/// <summary>Full laydown for drops of 7, 12, 14 and 30 pl, as tabulated before this code was written; and the published range of heavy coverage.</summary>
public sealed class InkVolumePublishedTests
{
    [Theory]
    [InlineData(360, 360, 1.41, 2.41, 2.81, 6.03)]
    [InlineData(600, 600, 3.91, 6.70, 7.81, 16.74)]
    [InlineData(720, 720, 5.62, 9.64, 11.25, 24.11)]
    [InlineData(720, 1440, 11.25, 19.28, 22.50, 48.21)]
    [InlineData(1200, 1200, 15.62, 26.78, 31.25, 66.96)]
    public void Full_laydown_is_as_tabulated(int scanDpi, int feedDpi, double at7, double at12, double at14, double at30)
    {
        Assert.Equal(at7, InkVolume.FullMlPerM2(scanDpi, feedDpi, 7), tolerance: 0.01);
        Assert.Equal(at12, InkVolume.FullMlPerM2(scanDpi, feedDpi, 12), tolerance: 0.01);
        Assert.Equal(at14, InkVolume.FullMlPerM2(scanDpi, feedDpi, 14), tolerance: 0.01);
        Assert.Equal(at30, InkVolume.FullMlPerM2(scanDpi, feedDpi, 30), tolerance: 0.01);
    }

    /// <summary>1 to 1.5 ml a square foot for heavy coverage, whatever the resolution [BigPicture].</summary>
    [Fact]
    public void A_flood_at_720_dpi_and_14_pl_lies_in_the_published_range() =>
        Assert.InRange(InkVolume.FullMlPerM2(720, 720, 14), 1 / 0.09290304, 1.5 / 0.09290304);
}

public sealed class InkVolumeLawTests
{
    [Theory]
    [InlineData(360, 42)]
    [InlineData(600, 12)]
    [InlineData(720, 14)]
    public void A_flood_of_one_square_metre_is_drops_times_volume(int dpi, double dropPl)
    {
        // Count the drops of one square metre row by row: rows of 1 m, each with its dots.
        double rows = 1000 / (25.4 / dpi), dots = 1000 / (25.4 / dpi);
        double ml = rows * dots * dropPl * 1e-9;
        Assert.Equal(ml, InkVolume.Of("flood", Presses.Mode(dpi: dpi, dropPl: dropPl), 1, 1).Value, tolerance: ml / 1000);
    }

    [Fact]
    public void Half_the_laydown_on_twice_the_area_takes_the_same_ink() =>
        Assert.Equal(InkVolume.Of("a", Presses.Mode(), 1, 1).Value, InkVolume.Of("b", Presses.Mode(), 0.5, 2).Value, 9);

    [Theory]
    [InlineData(8, 20, 1.0, 160)]
    [InlineData(8, 20, 0.5, 320)]
    [InlineData(16, 20, 1.5, 213.333333)]
    public void Dose_of_a_passage_is_irradiance_times_time(double wPerCm2, double windowMm, double mPerS, double mjPerCm2) =>
        Assert.Equal(mjPerCm2, Dose.OfPassage(wPerCm2, windowMm, mPerS), 5);

    [Fact]
    public void The_last_layer_gets_every_pass_under_every_lamp() =>
        Assert.Equal(160 * 4 * 2 * 0.5, Dose.OfLastLayer(new Lamp(395, 8, 20, 2), Presses.Mode(lamp: 50)).Value, 9);

    [Fact]
    public void Of_layers_printed_in_one_go_the_lamps_pass_the_first_as_often_as_all_together() =>
        Assert.Equal([1920.0, 1280, 640], Dose.OfLayers(new Lamp(395, 8, 20, 2), Presses.Mode(lamp: 50), 3));
}
