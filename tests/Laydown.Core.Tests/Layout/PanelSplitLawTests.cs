using Laydown.Layout.Panels;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

public sealed class PanelSplitLawTests
{
    [Theory]
    [InlineData(4200, 2600, 1350, 20, 4)]
    [InlineData(4200, 2600, 1350, 0, 4)]
    [InlineData(2700, 2600, 1350, 0, 2)]
    [InlineData(2700.1, 2600, 1350, 0, 3)]
    [InlineData(2680, 2600, 1350, 20, 2)]
    [InlineData(2680.1, 2600, 1350, 20, 3)]
    [InlineData(12_345.6, 3000, 1000, 25.4, 13)]
    public void Panels_are_equal_fit_the_stock_overlap_as_asked_and_cover_the_graphic(double width, double height, double stock, double overlap, int count)
    {
        IReadOnlyList<Piece> panels = PanelSplit.Split(new("w", new(width, height), 25, 2, false), stock, overlap);

        Assert.Equal(count, panels.Count);
        Assert.Equal(Enumerable.Range(1, count).Select(i => Invariant($"w/{i}")), panels.Select(p => p.Id));
        Assert.All(panels, p => Assert.InRange(p.Printed.WidthMm, panels[0].Printed.WidthMm - 1e-9, stock + 1e-9));
        Assert.All(panels, p => Assert.Equal(p.Printed, p.Part!.Value.Size));
        Assert.All(panels, p => Assert.Equal(2, p.Quantity));
        Assert.Equal(0, panels[0].Part!.Value.XMm, 9);
        Assert.Equal(width, panels[^1].Part!.Value.RightMm, 6);
        Assert.All(panels.Zip(panels.Skip(1)), pair => Assert.Equal(overlap, pair.First.Part!.Value.RightMm - pair.Second.Part!.Value.XMm, 6));
        // One panel fewer would be wider than the stock.
        Assert.True((width + ((count - 2) * overlap)) / (count - 1) > stock);
    }

    [Fact]
    public void A_graphic_that_fits_stays_whole() => Assert.Null(Assert.Single(PanelSplit.Split(new("w", new(1350, 9000), 0, 1, false), 1350, 20)).Part);

    [Fact]
    public void A_graphic_that_fits_turned_stays_whole() => Assert.Single(PanelSplit.Split(new("w", new(9000, 1350), 0, 1, true), 1350, 20));

    [Fact]
    public void An_overlap_as_wide_as_the_stock_is_refused() =>
        Assert.ThrowsAny<ArgumentException>(() => PanelSplit.Split(new("w", new(9000, 1350), 0, 1, true), 1000, 1000));
}
