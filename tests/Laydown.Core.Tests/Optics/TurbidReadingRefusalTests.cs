using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Readings that would mean a K or S under 0, and amounts under 0.</summary>
public sealed class TurbidReadingRefusalTests
{
    [Fact]
    public void A_negative_K_or_S_is_refused_by_name()
    {
        Refused("K times thickness: found -0.1", () => new TurbidAmount(-0.1, 1));
        Refused("S times thickness: found -2", () => new TurbidAmount(0, -2));
        Assert.Throws<ArgumentException>(() => new TurbidAmount(double.NaN, 0));
        Assert.Throws<ArgumentException>(() => new TurbidAmount(0, 1).Times(-1));
    }

    [Fact]
    public void More_light_out_than_in_is_a_negative_K() =>
        Refused("K negative", () => TurbidReading.OfFilm(0.6, 0.5));

    [Fact]
    public void A_film_that_lets_nothing_through_tells_no_thickness() =>
        Assert.Throws<ArgumentException>(() => TurbidReading.OfFilm(0.6, 0));

    [Fact]
    public void A_darker_look_over_a_lighter_base_is_refused()
    {
        Assert.Throws<ArgumentException>(() => TurbidReading.OverBlackAndBase(0.5, 0.4, 0.8));
        Assert.Throws<ArgumentException>(() => TurbidReading.OverTwoBases(0.3, 0.5, 0.4, 0.5));
        Assert.Throws<ArgumentException>(() => TurbidReading.OverBlackAndBase(double.NaN, 0.4, 0.8));
    }

    [Fact]
    public void A_layer_darker_than_its_black_base_allows_is_a_negative_S() =>
        Refused("S negative", () => TurbidReading.OverTwoBases(0.01, 0.05, 0.8, 0.8));

    [Fact]
    public void A_lighter_look_than_the_base_itself_can_give_is_a_negative_K() =>
        Assert.Throws<ArgumentException>(() => TurbidReading.OverBlackAndBase(0.05, 0.9, 0.8));

    [Fact]
    public void Surfaces_cannot_be_taken_off_what_is_darker_than_they_are()
    {
        Assert.Throws<ArgumentException>(() => Saunderson.Inside(0.03, 0.04, 0.6));
        Assert.Throws<ArgumentException>(() => Saunderson.InsideAt45(1.02, Boundary.Ink));
        Assert.Throws<ArgumentException>(() => Saunderson.FilmInside(0.05, 0.3, Boundary.Ink));
        Assert.Throws<ArgumentException>(() => Saunderson.FilmInside(0.6, 0.6, Boundary.Ink));
        Assert.Throws<ArgumentOutOfRangeException>(() => Saunderson.Seen(0.5, 0.04, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Saunderson.SeenAt45(-0.1, Boundary.Ink));
    }

    private static void Refused(string words, Func<object> making) =>
        Assert.Contains(words, Assert.Throws<ArgumentException>(making).Message, StringComparison.Ordinal);
}
