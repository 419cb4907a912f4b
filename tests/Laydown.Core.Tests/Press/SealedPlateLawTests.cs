using Laydown.Press.HoldDown;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.Press;

public sealed class SealedPlateLawTests
{
    [Fact]
    public void The_pressure_that_brings_the_middle_down_brings_it_down_by_that_height_whichever_side_is_named_first()
    {
        double pa = SealedPlate.PressurePa(309, 1220, 2440, 6);
        Assert.Equal(6, SealedPlate.MiddleMm(309, 2440, 1220, pa), 9);
    }

    /// <summary>A thick sheet on a weak vacuum: the strip along its longer side would lie, the plate does not, and the heads follow the plate.</summary>
    [Fact]
    public void A_dome_the_vacuum_does_not_bring_down_stands_under_the_heads()
    {
        Stock sheet = Presses.Board(bow: 5) with { ThicknessMm = 25, WeightGPerM2 = 12_000 };
        PressDescription press = Presses.Hybrid(Presses.Mode());
        SheetHeight height = SheetHeights.Of(press, sheet, 0, 0, 0);
        double down = Assert.Single(height.Figures, f => f.Name.StartsWith("pressure that brings", StringComparison.Ordinal)).Value;
        double acts = (sheet.WeightGPerM2 / 1000 * 9.81) + (press.Vacuum.FullKpa * 1000 * press.Vacuum.OpenAreaPercent / 100);
        Assert.True(down > acts);
        Assert.Equal(5 * (1 - (acts / down)), height.HumpMm, 6);
        Assert.True(height.HighestPointMm >= sheet.ThicknessMm + height.HumpMm);
    }
}
