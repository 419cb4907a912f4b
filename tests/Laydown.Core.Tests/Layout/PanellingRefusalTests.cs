using Laydown.Layout.Panels;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class PanellingRefusalTests
{
    public static IEnumerable<TheoryDataRow<PanelWish, string>> Wishes() =>
    [
        new(new(20, 10), "overlapMostMm"),
        new(new(double.NaN, 10), "overlapLeastMm"),
        new(new(2.5, 10), "overlapLeastMm"),
        new(new(LeastWidthMm: 0), "leastWidthMm"),
        new(new(0, 0, SeamBleedMm: 51), "seamBleedMm"),
        new(new(0, 0, SeamBleedMm: double.NaN), "seamBleedMm"),
        new(new(20, 20, SeamBleedMm: 5), "seamBleedMm"),
        new(new(-10, -10, SeamBleedMm: 5), "seamBleedMm"),
        new(new(LeastWidthMm: double.PositiveInfinity), "leastWidthMm"),
        new(new(Widths: PanelWidths.Given), "givenMm"),
        new(new(Widths: PanelWidths.Given, GivenMm: [1200, -5]), "givenMm"),
        new(new(SeamSlackMm: -1), "seamSlackMm"),
        new(new(ElsewhereCost: -1), "elsewhereCost"),
        new(new(SeamsAtMm: [double.NaN]), "seamsAtMm"),
        new(new(LeastWidthMm: 1400), "panels"),
        new(new(Widths: PanelWidths.Given, GivenMm: [1200, 1200]), "panels"),
        new(new(SeamsAtMm: [10], SeamsOnlyThere: true), "panels"),
    ];

    [Theory, MemberData(nameof(Wishes))]
    public void A_wish_that_cannot_be_met_is_refused_by_name(PanelWish wish, string field)
    {
        InputFault fault = Assert.Single(Panelling.Solve(new("TW-9", new(6460, 2460), 30, new(1350, 40_000), false, wish, [])).Faults);

        Assert.Contains("TW-9", fault.File, StringComparison.Ordinal);
        Assert.Contains(field, fault.Field, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_that_no_seam_may_cross_and_that_is_wider_than_the_stock_is_refused() => Assert.Single(
        Panelling.Solve(new("w", new(6460, 2460), 30, new(1350, 40_000), false, new(), [new(new(2000, 0, 1400, 100), 0, Never: true)])).Faults);

    [Fact]
    public void A_cost_below_nothing_is_refused() => Assert.Single(
        Panelling.Solve(new("w", new(6460, 2460), 30, new(1350, 40_000), false, new(), [new(new(0, 0, 100, 100), -1)])).Faults);

    [Fact]
    public void A_graphic_of_no_size_is_refused() => Assert.Single(
        Panelling.Solve(new("w", new(0, 2460), 0, new(1350, 40_000), false, new(), [])).Faults);
}
