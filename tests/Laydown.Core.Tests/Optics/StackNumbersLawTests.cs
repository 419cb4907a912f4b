using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Numbers and maps of stacks: what they must be by their definitions.</summary>
public sealed class StackNumbersLawTests
{
    private static readonly LookInk[] Cmyk = [.. Enumerable.Range(0, 4).Select(i => LookInk.Colour(GenericUvInks.Density((ProcessInk)i)))];
    private static readonly double[] White = [0, 0, 0, 0, 1, 0, 0, 0, 0];

    private static LookLayer[] Panel(double white = 8) =>
        [new(LookFace.First, Cmyk), new(LookFace.First, [LookInk.White(white)]), new(LookFace.First, Cmyk)];

    private static StackNumbers Numbers(Scene? scene = null, Adaptation? viewer = null, double white = 8) =>
        new(LookSheet.Clear(0.92), Panel(white), scene ?? Scene.Lit(), adaptation: viewer);

    [Fact]
    public void A_bare_clear_sheet_lets_all_of_itself_through()
    {
        SpotNumbers bare = Numbers().At(new double[9]);
        Assert.Equal(92, bare.TransmissionPercent, tolerance: 1e-9);
        Assert.Equal(100, bare.RelativeTransmissionPercent, tolerance: 1e-9);
        Assert.Equal(-Math.Log10(0.92), bare.Density, tolerance: 1e-12);
        Assert.Equal(0, bare.RelativeDensity, tolerance: 1e-12);
        Assert.Equal(0, bare.ContrastRatio, tolerance: 1e-12);
        Assert.Equal(0, bare.ShowThrough, tolerance: 1e-12);
    }

    [Fact]
    public void Opacity_is_the_quotient_of_two_printed_columns()
    {
        // The table of white densities holds reflectance before a black and before a 0.8 box.
        foreach (double[] row in PublishedTable.Rows("optics/white-density-tradeoff.csv").Where(r => r[0] >= 8))
        {
            // From S·X 8 on the share of straight light is under 4e-5.
            SpotNumbers found = new StackNumbers(LookSheet.Clear(2 * 1.5 / 3.25), Panel(row[0]), Scene.Lit()).At(White);
            Assert.Equal(row[3] / row[4], found.ContrastRatio, tolerance: 6e-5);
            Assert.Equal(100 * row[8], found.TransmissionPercent, tolerance: 5e-3);
        }
    }

    [Fact]
    public void More_white_hides_more_and_shows_less_through()
    {
        double lastRatio = 0, lastShow = 100;
        foreach (double white in new[] { 0.5, 1, 2, 4, 6, 8, 12, 20, 30 })
        {
            SpotNumbers found = Numbers(white: white).At([1, 1, 0, 0, 1, 0, 0, 0, 0]);
            Assert.InRange(found.ContrastRatio, lastRatio, 1);
            Assert.InRange(found.ShowThrough, 0, lastShow);
            (lastRatio, lastShow) = (found.ContrastRatio, found.ShowThrough);
        }
    }

    [Fact]
    public void Show_through_is_the_difference_of_two_day_views()
    {
        double[] spot = [0.3, 0.9, 0.1, 0, 1, 0.2, 0, 0.4, 0.1], without = [0, 0, 0, 0, 1, 0.2, 0, 0.4, 0.1];
        SpotNumbers with = Numbers().At(spot), bare = Numbers().At(without);
        Assert.Equal(Ciede2000.Between(with.DayLab, bare.DayLab), with.ShowThrough, tolerance: 1e-12);
        Assert.Equal(0, bare.ShowThrough, tolerance: 1e-12);
        Assert.Equal([0], Numbers().BackLayers);
    }

    [Fact]
    public void Layers_behind_are_found_as_the_viewer_stands()
    {
        LookLayer[] layers =
            [new(LookFace.First, [LookInk.White(8)]), new(LookFace.First, Cmyk), new(LookFace.Second, Cmyk), new(LookFace.Second, Cmyk)];
        Assert.Equal([2, 3], new StackNumbers(LookSheet.Clear(0.92), layers, Scene.Lit()).BackLayers);
        Assert.Equal([1], new StackNumbers(LookSheet.Clear(0.92), layers, Scene.Lit(), LookFace.Second).BackLayers);
        Assert.Empty(new StackNumbers(LookSheet.Clear(0.92), layers[1..], Scene.Lit()).BackLayers);
        Assert.Equal([1, 2], new StackNumbers(LookSheet.Opal(0.4, 0.5), layers[1..], Scene.Lit()).BackLayers);
    }

    [Fact]
    public void Luminance_is_room_and_lamp_added()
    {
        Scene scene = new(100, Illuminant.D50, 3000, Illuminant.LedB4, 0.8);
        SpotNumbers lit = Numbers(scene).At([0, 0.5, 0, 0, 1, 0.2, 0, 0, 0]);
        Assert.Equal(lit.DayCdPerM2 + (3000 * lit.TransmissionPercent / 100), lit.LitCdPerM2, tolerance: 1e-9);
        Assert.Equal(lit.DayLab, Numbers(new(5000, Illuminant.D50, 0, Illuminant.LedB4, 0.8)).At([0, 0.5, 0, 0, 1, 0.2, 0, 0, 0]).DayLab);
    }

    [Fact]
    public void Room_light_takes_contrast()
    {
        // (L0·Tmax + E·R/π)/(L0·Tmin + E·R/π): the eye sees less contrast the brighter the room.
        double[] dark = [1, 1, 1, 1, 1, 1, 1, 1, 1];
        double last = double.MaxValue, inDark = Numbers().At(dark).ContrastInDark;
        foreach (double lux in new[] { 0.0, 1, 20, 100, 500 })
        {
            SpotNumbers found = Numbers(new(lux, Illuminant.D50, 3000, Illuminant.LedB4, 0.8)).At(dark);
            Assert.Equal(inDark, found.ContrastInDark, tolerance: 1e-9);
            Assert.True(found.ContrastInRoom < last);
            last = found.ContrastInRoom;
        }

        Assert.Equal(1, Numbers().At(White).ContrastInRoom, tolerance: 1e-12);
        SpotNumbers closed = Numbers(new(0, Illuminant.D50, 3000, Illuminant.LedB4, 0.8)).At(dark);
        Assert.Equal(closed.ContrastInDark, closed.ContrastInRoom, tolerance: 1e-9);
    }

    [Fact]
    public void The_eye_takes_for_white_what_it_is_adapted_to()
    {
        Lab lamp = Numbers(viewer: Adaptation.OfLamp).At(White).LitLab;
        Assert.Equal(100, lamp.L, tolerance: 1e-9);
        Assert.Equal(0, lamp.Chroma, tolerance: 1e-9);

        // To an eye adapted to 20 lx the lit piece is far over white; in between it is between.
        double room = Numbers(viewer: Adaptation.OfRoom).At(White).LitLab.L, half = Numbers(viewer: new(0.5)).At(White).LitLab.L;
        Assert.True(room > half && half > 100);

        // An eye that does not adapt sees the lamp's own tint.
        Assert.True(Numbers(viewer: new(1, degree: 0)).At(White).LitLab.Chroma > 1);
    }

    [Fact]
    public void Adapted_to_the_lamp_the_lit_view_agrees_with_the_look()
    {
        // The look carries over by Bradford, the numbers by CAT16: on spots of little chroma they stay within a small difference.
        double[] spot = [0.1, 0.2, 0.1, 0, 1, 0.2, 0.1, 0, 0];
        Lab look = new StackLook(LookSheet.Clear(0.92), Panel(), Scene.Lit()).At(spot).Lab;
        Assert.Equal(0, Ciede2000.Between(look, Numbers().At(spot).LitLab), tolerance: 0.5);
    }

    [Fact]
    public void A_dark_surround_flattens_and_keeps_white()
    {
        double[] grey = [0.4, 0.3, 0.3, 0, 1, 0.4, 0.3, 0.3, 0];
        double average = Numbers().At(grey).LitLab.L;
        double dim = Numbers(viewer: new(1, surround: Surround.Dim)).At(grey).LitLab.L;
        double dark = Numbers(viewer: new(1, surround: Surround.Dark)).At(grey).LitLab.L;
        Assert.True(dark > dim && dim > average);
        Assert.Equal(100, Numbers(viewer: new(1, surround: Surround.Dark)).At(White).LitLab.L, tolerance: 1e-9);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(1)]
    public void Fast_maps_equal_the_plain_numbers(double white)
    {
        const int width = 60;
        StackNumbers numbers = Numbers(white: white);
        byte[] planes = [.. Enumerable.Range(0, 9 * width).Select(i => (byte)(i % 4 == 0 ? 0 : 255 * Prints.Scatter(i)[2]))];
        SpotNumbers[] plain = [.. Enumerable.Range(0, width).Select(x =>
            numbers.At([.. Enumerable.Range(0, 9).Select(ink => planes[(ink * width) + x] / 255.0)]))];
        void Same(SpotMap map, Func<SpotNumbers, double> number, double relative, double least)
        {
            float[] found = new float[width];
            numbers.Row(map, planes, width, found);
            for (int x = 0; x < width; x++)
                Assert.Equal(number(plain[x]), found[x], tolerance: (relative * Math.Abs(number(plain[x]))) + least);
        }

        // Single precision over 36 bands; the row leaves out shares of straight light under 1e-4, which is 1e-4 of the lamp at most.
        Same(SpotMap.ContrastRatio, n => n.ContrastRatio, 3e-4, 1e-4);
        Same(SpotMap.TransmissionPercent, n => n.TransmissionPercent, 5e-4, 0.01);
        Same(SpotMap.RelativeTransmissionPercent, n => n.RelativeTransmissionPercent, 5e-4, 0.01);
        Same(SpotMap.DayCdPerM2, n => n.DayCdPerM2, 3e-4, 1e-3);
        Same(SpotMap.LitCdPerM2, n => n.LitCdPerM2, 5e-4, 0.3);
        Same(SpotMap.ContrastInRoom, n => n.ContrastInRoom, 3e-3, 0);
        Same(SpotMap.ContrastInDark, n => n.ContrastInDark, 3e-3, 0);
        Same(SpotMap.ShowThrough, n => n.ShowThrough, 5e-3, 5e-3);
    }

    [Fact]
    public void A_sheet_that_lets_nothing_through_has_numbers_too()
    {
        SpotNumbers found = new StackNumbers(LookSheet.Opaque(0.86), [new(LookFace.First, Cmyk)], Scene.Lit()).At([1, 0, 0, 0]);
        Assert.Equal(0, found.TransmissionPercent);
        Assert.Equal(0, found.RelativeTransmissionPercent);
        Assert.Equal(SpotNumbers.MostDensity, found.Density);
        Assert.Equal(1, found.ContrastRatio, tolerance: 1e-12);
        Assert.Equal(1, found.ContrastInDark);
    }

    [Fact]
    public void What_cannot_be_told_is_refused()
    {
        Scene dark = new(0, Illuminant.D50, 3000, Illuminant.LedB4, 0.8);
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Numbers(dark, Adaptation.OfRoom));
        Assert.Contains("lux over 0", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new StackNumbers(LookSheet.Clear(0.92), Panel(), dark, backLayers: [3]));
        Assert.Throws<ArgumentException>(() => Numbers().Row(SpotMap.ShowThrough, new byte[8], 1, new float[1]));
        Assert.Throws<ArgumentException>(() => Numbers().Row((SpotMap)99, new byte[9], 1, new float[1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Adaptation(1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Adaptation(1, surround: (Surround)7));
    }
}
