using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Sheets that there cannot be.</summary>
public sealed class LookSheetRefusalTests
{
    [Fact]
    public void More_light_out_than_in_is_refused()
    {
        Assert.Throws<ArgumentException>(() => LookSheet.Opal(0.6, 0.6));
        double[] reflectance = Bands.Flat(0.5), transmittance = Bands.Flat(0.4);
        transmittance[35] = 0.51;
        ArgumentException refused = Assert.Throws<ArgumentException>(() => LookSheet.Opal(reflectance, transmittance));
        Assert.Contains("0.51", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Values_outside_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => LookSheet.Clear(0));
        Assert.Throws<ArgumentException>(() => LookSheet.Clear(Bands.Flat(1.01)));
        Assert.Throws<ArgumentException>(() => LookSheet.Clear([0.9, 0.9]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LookSheet.Opal(-0.1, 0.5));
        Assert.Throws<ArgumentException>(() => LookSheet.Opaque(Bands.Flat(double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => LookSheet.Clear(0.92).Textured(1.2));
    }
}
