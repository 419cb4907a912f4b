using Laydown.Artwork.Checks;
using static Laydown.Core.Tests.Artwork.Sample;

namespace Laydown.Core.Tests.Artwork;

public sealed class ChecksRefusalTests
{
    [Fact]
    public void A_wish_without_size_distance_or_resolution_is_refused()
    {
        Assert.ThrowsAny<ArgumentException>(() => ArtworkChecks.Run(Of(Page), Wish with { Finished = new(0, 400) }));
        Assert.ThrowsAny<ArgumentException>(() => ArtworkChecks.Run(Of(Page), Wish with { ViewingDistanceM = 0 }));
        Assert.ThrowsAny<ArgumentException>(() => ArtworkChecks.Run(Of(Page), Wish with { ScanDpi = 0 }));
        Assert.ThrowsAny<ArgumentException>(() => ArtworkChecks.Run(Of(Page), Wish with { BleedMm = double.NaN }));
    }

    [Theory]
    [InlineData("")]
    [InlineData("12a4")]
    public void A_number_that_is_none_has_no_check_digit(string text) => Assert.Throws<ArgumentException>(() => CodeRules.CheckDigit(text));
}
