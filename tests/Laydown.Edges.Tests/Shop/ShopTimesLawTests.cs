using Laydown.Plan.Calendar;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Times of the log go by the clock of the shop, wherever the machine stands.</summary>
public sealed class ShopTimesLawTests
{
    private static readonly Catalogue Vienna = new("Shop", "", [], [], [], [], new("EUR", default, 0, 0, 0, 0, [], 30))
    {
        Calendar = new("Europe/Vienna", [new("day", [DayOfWeek.Monday], new(8, 0), new(16, 0))], [], []),
    };

    [Theory]
    [InlineData("2026-11-26", "2026-11-25T23:00:00+00:00")]
    [InlineData("2026-07-01T09:30", "2026-07-01T07:30:00+00:00")]
    [InlineData("2026-11-26T09:30+05:00", "2026-11-26T04:30:00+00:00")]
    [InlineData("2026-11-26T09:30Z", "2026-11-26T09:30:00+00:00")]
    public void A_time_without_an_offset_is_the_shops_own(string told, string instant) =>
        Assert.Equal(DateTimeOffset.Parse(instant, System.Globalization.CultureInfo.InvariantCulture), ShopTimes.Read(told, Vienna));

    [Theory]
    [InlineData(null)]
    [InlineData("soon")]
    [InlineData("0001-01-01")]
    [InlineData("9999-12-31")]
    public void What_is_no_time_of_a_log_is_none(string? told) => Assert.Null(ShopTimes.Read(told, Vienna));

    [Fact]
    public void An_instant_after_midnight_at_the_shop_lies_on_the_shops_next_day()
    {
        DateTimeOffset late = new(2026, 11, 26, 23, 30, 0, TimeSpan.Zero);
        Assert.Equal((27, late), (ShopTimes.Of(late, Vienna).Day, ShopTimes.Of(late, Vienna)));
    }
}
