using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class LanePlanRefusalTests
{
    private static readonly Belt Belt = new(1000, 3000, [new("A", 0, 500), new("B", 500, 500)], [0, 250, 500, 750], 4);

    [Fact]
    public void Blanks_that_do_not_fit_side_by_side_are_told_with_the_belt()
    {
        InputFault fault = Assert.Single(LanePlan.Solve("R-1", [new("a", new(600, 300), 1), new("b", new(500, 300), 1)], anyOrder: true, Belt).Faults);
        Assert.Equal(("R-1", "lanes"), (fault.File, fault.Field));
        Assert.Contains("a 600", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_blank_that_no_belt_takes_is_told_by_its_name() =>
        Assert.Equal(("b", "size"), Assert.Single(LanePlan.Solve("R-1", [new("a", new(300, 300), 1), new("b", new(1100, 300), 1)], true, Belt).Faults) is { } f ? (f.File, f.Field) : default);

    [Fact]
    public void Pins_too_near_each_other_hold_no_blank() =>
        Assert.False(LanePlan.Solve("a", new(400, 300), 1, false, Belt with { PinsMm = [100, 150] }).IsTaken);

    [Fact]
    public void An_id_that_comes_twice_is_the_callers_mistake() =>
        Assert.Throws<ArgumentException>(() => LanePlan.Solve("R-1", [new("a", new(300, 300), 1), new("a", new(200, 300), 1)], true, Belt));

    [Fact]
    public void No_blanks_and_too_many_are_the_callers_mistake()
    {
        Assert.ThrowsAny<ArgumentException>(() => LanePlan.Solve("R-1", [], true, Belt));
        Assert.ThrowsAny<ArgumentException>(() => LanePlan.Solve("R-1", [.. Enumerable.Range(0, 9).Select(i => new LaneBlank(Invariant($"{i}"), new(50, 50), 1))], true, Belt));
    }
}
