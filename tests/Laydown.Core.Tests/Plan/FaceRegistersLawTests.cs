using Laydown.Core.Tests.Press;
using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Core.Tests.Plan;

/// <summary>The size tolerance of a sheet comes into the register exactly where another edge comes to a lay.</summary>
public sealed class FaceRegistersLawTests
{
    private static readonly PressDescription Press = Presses.Hybrid(Presses.Mode()) with { LayErrorMm = 0.25 };
    private static readonly Stock Board = Presses.Board() with { SizeToleranceMm = 2 };
    private static readonly SizeMm Tall = new(1220, 2440);

    [Theory]
    [InlineData(SheetTurn.Sideways, false, false, 2.5, 0.5)]
    [InlineData(SheetTurn.Sideways, false, true, 0.5, 0.5)]
    [InlineData(SheetTurn.HeadToFoot, false, false, 0.5, 2.5)]
    [InlineData(SheetTurn.HeadToFoot, false, true, 0.5, 2.5)]
    [InlineData(SheetTurn.Sideways, true, false, 0.5, 2.5)]
    [InlineData(SheetTurn.HeadToFoot, true, false, 2.5, 0.5)]
    [InlineData(SheetTurn.HeadToFoot, true, true, 0.5, 0.5)]
    public void Another_edge_at_a_lay_brings_the_tolerance_of_the_size_in(SheetTurn turn, bool onItsSide, bool farLay, double across, double along)
    {
        FaceRegister register = FaceRegisters.Of(Press with { FarSideLay = farLay }, Board, turn, onItsSide);

        Assert.Equal(across, register.AcrossMm, 1e-9);
        Assert.Equal(along, register.AlongMm, 1e-9);
        Assert.Equal(Math.Max(across, along), register.MostMm, 1e-9);
        Assert.NotEqual(register.SideEdgeChanges, register.FrontEdgeChanges);
    }

    [Fact]
    public void Of_both_ways_the_one_with_less_is_taken_and_of_equal_ones_the_front_edge_stays()
    {
        Assert.Equal(SheetTurn.Sideways, FaceRegisters.Of(Press with { FarSideLay = true }, Board, TurnedAbout.Least, Tall, onItsSide: false).Turn);
        Assert.Equal(SheetTurn.HeadToFoot, FaceRegisters.Of(Press with { FarSideLay = true }, Board, TurnedAbout.Least, Tall, onItsSide: true).Turn);
        Assert.False(FaceRegisters.Of(Press, Board, TurnedAbout.Least, Tall, onItsSide: false).FrontEdgeChanges);
        Assert.False(FaceRegisters.Of(Press, Board, TurnedAbout.Least, Tall, onItsSide: true).FrontEdgeChanges);
    }

    [Fact]
    public void About_the_long_edge_a_tall_sheet_goes_sideways_and_a_wide_one_head_to_foot()
    {
        Assert.Equal(SheetTurn.Sideways, FaceRegisters.Of(Press, Board, TurnedAbout.LongEdge, Tall, false).Turn);
        Assert.Equal(SheetTurn.HeadToFoot, FaceRegisters.Of(Press, Board, TurnedAbout.LongEdge, Tall.Turned(), false).Turn);
        Assert.Equal(SheetTurn.HeadToFoot, FaceRegisters.Of(Press, Board, TurnedAbout.ShortEdge, Tall, false).Turn);
        Assert.Equal(SheetTurn.Sideways, FaceRegisters.Of(Press, Board, TurnedAbout.ShortEdge, Tall.Turned(), false).Turn);
    }
}
