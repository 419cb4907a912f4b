using Laydown.Layout.Boards;
using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class BeltPlacesLawTests
{
    private static readonly Belt Plain = new(2600, 3050, [new("A", 0, 300), new("B", 300, 500), new("C", 800, 460), new("D", 1260, 1340)], [0, 40, 800, 1260], 4);

    [Fact]
    public void A_board_is_laid_at_a_pin_over_the_fewest_open_zones()
    {
        BeltPlace place = BeltPlaces.ForBoard("board", new(1220, 2440), 5, Plain).Value;
        Assert.Equal((1220, 2440, false), (place.AcrossMm, place.FeedMm, place.Turned));
        Assert.Equal((0, 5), (place.Lanes.Single().StartMm, place.Lanes.Single().Blanks));
        Assert.Equal(["A", "B", "C"], place.OpenZones);
        Assert.Equal(["D"], place.ShutZones);
        Assert.Equal(40, place.UncoveredMm, 9);
        Assert.Equal("pins", place.FrontLay);
    }

    [Fact]
    public void A_board_too_long_as_it_comes_is_turned() =>
        Assert.True(BeltPlaces.ForBoard("board", new(1500, 3200), 1, Plain with { WidthMm = 3300, Zones = [], MaxFeedMm = 3050 }).Value.Turned);

    [Fact]
    public void A_board_too_large_both_ways_is_refused_with_its_size()
    {
        InputFault fault = Assert.Single(BeltPlaces.ForBoard("foam-5", new(2700, 3100), 1, Plain).Faults);
        Assert.Equal(("foam-5", "size"), (fault.File, fault.Field));
        Assert.Contains("2700 × 3100 mm", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_board_no_zone_holds_is_refused_as_not_held() =>
        Assert.Equal("hold-down", Assert.Single(BeltPlaces.ForBoard("b", new(500, 500), 1, Plain with { Zones = [new("A", 2000, 100)] }).Faults).Field);

    [Fact]
    public void A_roll_lies_at_its_station_without_a_front_lay()
    {
        BeltPlace place = BeltPlaces.ForRoll("mesh", 1370, 25_000, 0, Plain).Value;
        Assert.Equal(("none", 1370, 25_000), (place.FrontLay, place.AcrossMm, place.FeedMm));
        Assert.Equal(["A", "B", "C", "D"], place.OpenZones.Concat(place.ShutZones).Order());
    }

    [Fact]
    public void A_roll_beyond_the_belt_is_refused() => Assert.False(BeltPlaces.ForRoll("mesh", 1370, 25_000, 1300, Plain).IsTaken);

    [Fact]
    public void Overlapping_zones_are_refused() => Assert.Throws<ArgumentException>(
        () => BeltPlaces.ForBoard("b", new(500, 500), 1, Plain with { Zones = [new("A", 0, 300), new("B", 200, 300)] }));

    [Fact]
    public void A_blank_shows_the_middle_of_its_picture()
    {
        SheetLayout sheet = Assert.Single(BlankLayout.Solve([new("a", new(306, 206), 3, 40, true)], new(200, 300), 0.5).Sheets);
        Placement placement = Assert.Single(sheet.Placements);
        Assert.Equal((40, true), (sheet.Repeats, placement.Turned));
        Assert.Equal(new RectMm(0, 0, 200, 300), placement.Place);
        Assert.Equal(new RectMm(3, 3, 300, 200), placement.Part);
    }

    [Fact]
    public void A_piece_of_another_size_than_the_blank_comes_back() =>
        Assert.Equal("a", Assert.Single(BlankLayout.Solve([new("a", new(306, 206), 3, 40, true)], new(210, 300), 0.5).Unplaced).PieceId);
}
