using Laydown.Measures;
using Laydown.Shop.Layers;
using Xunit;

namespace Laydown.Edges.Tests.Looks;

public sealed class SolvePanelRefusalTests : IDisposable
{
    private readonly PanelDesk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public async Task A_sheet_that_lets_no_light_through_is_refused() =>
        Assert.Equal("/build/dayNight", (await FaultAsync(r => r with { Piece = r.Piece! with { StockId = "foamed-pvc-3", ConditionId = "long-belt-boards", SeenThroughSheet = false } })).Field);

    [Fact]
    public async Task A_print_condition_that_does_not_hold_for_the_stock_is_refused() =>
        Assert.Contains("does not hold for acrylic-clear-5", (await FaultAsync(r => r with { Piece = r.Piece! with { ConditionId = "long-belt-boards" } })).Found, StringComparison.Ordinal);

    [Fact]
    public async Task Strengths_that_do_not_fit_the_use_of_the_white_are_refused() =>
        Assert.Equal("whiteStrengths", (await FaultAsync(r => r with { Wish = r.Wish with { White = WhiteChoice.Free, WhiteStrengths = [1] } })).Field);

    [Fact]
    public async Task A_weight_outside_its_range_is_refused() =>
        Assert.Equal(("nightWeight", "500"), (await FaultAsync(r => r with { Wish = r.Wish with { NightWeight = 500 } })) is var f ? (f.Field, f.Found) : default);

    [Fact]
    public async Task A_folder_that_stands_already_is_refused_and_kept()
    {
        Directory.CreateDirectory(desk.Out);
        await File.WriteAllTextAsync(Path.Combine(desk.Out, "mine.txt"), "mine", TestContext.Current.CancellationToken);
        Assert.Equal("out", (await FaultAsync(r => r)).Field);
        Assert.Equal(["mine.txt"], Directory.GetFiles(desk.Out).Select(Path.GetFileName));
    }

    [Fact]
    public async Task Both_pictures_are_looked_at_before_anything_is_refused()
    {
        Reading<StoredLook> read = await desk.Solver().SolveAsync(
            desk.Request() with { DayPath = "/nowhere/a.png", NightPath = "/nowhere/b.png" }, null, TestContext.Current.CancellationToken);
        Assert.Equal(["a.png", "b.png"], read.Faults.Select(f => f.File));
    }

    [Fact]
    public async Task A_profile_for_the_proof_that_is_none_leaves_no_look()
    {
        InputFault fault = await FaultAsync(r => r with { ProofProfile = r.DayPath });
        Assert.Equal("day.png", fault.File);
        Assert.False(Directory.Exists(desk.Out));
    }

    [Fact]
    public async Task An_item_that_does_not_exist_is_named() =>
        Assert.Equal("no item 'X-9'", (await FaultAsync(r => r with { ItemId = "X-9", Piece = null, OutFolder = null })).Found);

    private async Task<InputFault> FaultAsync(Func<PanelRequest, PanelRequest> change)
    {
        Reading<StoredLook> read = await desk.Solver().SolveAsync(change(desk.Request()), null, TestContext.Current.CancellationToken);
        Assert.False(read.IsTaken);
        return read.Faults[0];
    }
}
