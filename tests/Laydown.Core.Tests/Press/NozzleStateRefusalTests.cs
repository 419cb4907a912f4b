using Laydown.Measures;
using Laydown.Press.Machines;
using Xunit;

namespace Laydown.Core.Tests.Press;

public sealed class NozzleStateRefusalTests
{
    [Fact]
    public void A_sound_state_is_taken() => Assert.Empty(PressCheck.Of(With(new NozzleState("Cyan", [0, 999], [new(5, -40)])), "press.json"));

    [Theory]
    [InlineData(1000, "0 to 999")]
    [InlineData(-1, "0 to 999")]
    [InlineData(7, "each nozzle once")]
    public void A_missing_nozzle_the_channel_has_not_or_that_is_named_twice_is_refused_with_its_place(int nozzle, string wanted)
    {
        InputFault fault = Assert.Single(PressCheck.Of(With(new NozzleState("Cyan", [7, nozzle], [])), "press.json"));
        Assert.Equal("/nozzleStates/0/missing/1", fault.Field);
        Assert.Contains(wanted, fault.Wanted, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1000, "0 to 999")]
    [InlineData(3, "a nozzle that fires")]
    [InlineData(4, "each nozzle once")]
    public void A_slanted_nozzle_that_cannot_be_is_refused_with_its_place(int nozzle, string wanted)
    {
        InputFault fault = Assert.Single(PressCheck.Of(With(new NozzleState("Cyan", [3], [new(4, 10), new(nozzle, 10)])), "press.json"));
        Assert.Equal("/nozzleStates/0/slanted/1/nozzle", fault.Field);
        Assert.Contains(wanted, fault.Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_channel_that_is_none_or_named_twice_is_refused()
    {
        Assert.Equal("/nozzleStates/0/channelId", Assert.Single(PressCheck.Of(With(new NozzleState("X", [], [])), "press.json")).Field);
        Assert.Equal("/nozzleStates/1/channelId", Assert.Single(PressCheck.Of(With(new("Cyan", [], []), new("Cyan", [], [])), "press.json")).Field);
    }

    [Theory]
    [InlineData(4, 180)]
    [InlineData(4, -1)]
    [InlineData(1, 1)]
    public void A_feather_that_has_nothing_to_fade_into_is_refused(int passes, int feather)
    {
        Mode mode = Presses.Mode(passes: passes, speed: 0.5) with { FeatherNozzles = feather };
        Assert.Equal("/modes/0/featherNozzles", Assert.Single(PressCheck.Of(Presses.Hybrid(mode), "press.json")).Field);
    }

    [Fact]
    public void A_feathered_mode_faster_than_one_pass_can_fire_every_column_is_refused()
    {
        // 20 kHz at 720 dpi is 0.7056 m/s: with hard edges four passes share the columns, with soft ones a row may be nearly all of one.
        Mode fast = Presses.Mode(speed: 1), slow = Presses.Mode(speed: 0.7) with { FeatherNozzles = 100 };
        Assert.Empty(PressCheck.Of(Presses.Hybrid(fast, slow), "press.json"));
        InputFault fault = Assert.Single(PressCheck.Of(Presses.Hybrid(fast with { FeatherNozzles = 100 }), "press.json"));
        Assert.Contains("at most 0.706 m/s", fault.Wanted, StringComparison.Ordinal);
    }

    private static PressDescription With(params NozzleState[] states) => Presses.Hybrid(Presses.Mode()) with { NozzleStates = states };
}
