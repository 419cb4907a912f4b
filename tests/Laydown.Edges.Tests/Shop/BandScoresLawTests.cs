using Laydown.Demo.Descriptions;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.UseCases;

public sealed class BandScoresLawTests : IDisposable
{
    private readonly Store.TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public void A_press_that_tells_no_placement_is_not_judged() =>
        Assert.Null(BandScores.Of(Press() with { Placement = null }, Press().Modes[2], Demand(1)));

    [Fact]
    public void Worse_placement_and_missing_nozzles_of_a_dark_ink_are_seen_more()
    {
        PressDescription press = Press();
        Mode everyday = press.FindMode("everyday")!;
        double asItIs = BandScores.Of(press, everyday, Demand(1))!.VisibleDeltaL;
        Assert.True(BandScores.Of(press with { Placement = new(400, 10, 60) }, everyday, Demand(1))!.VisibleDeltaL > 2 * asItIs);
        BandScore dead = BandScores.Of(press with { NozzleStates = [new("K", [100], [])] }, everyday, Demand(1))!;
        Assert.True(dead.VisibleDeltaL > 2 * asItIs);
        Assert.False(dead.IsBorne);
        Assert.Equal("missing nozzles", dead.Because);
    }

    [Fact]
    public void A_second_look_gives_the_same_score() =>
        Assert.Equal(BandScores.Of(Press(), Press().Modes[3], Demand(0.7)), BandScores.Of(Press(), Press().Modes[3], Demand(0.7)));

    private static ModeDemand Demand(double distanceM) => new(distanceM, null, null,
        new([new Layer(SheetFace.First, InkGroup.Colour, null, null, 1, 100, 0, false)], false, []), new(1000, 700));

    private PressDescription Press()
    {
        string folder = Path.Combine(temp.Path, "catalogue");
        if (!Directory.Exists(folder))
            DemoCatalogue.Write(folder, CancellationToken.None);
        return Formats.Json.LaydownJson.ReadFile<PressDescription>(Path.Combine(folder, "presses", "long-belt.json")).Value;
    }
}
