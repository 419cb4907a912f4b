using Laydown.Layout.Rolls;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class RollLayoutLawTests
{
    public static IEnumerable<TheoryDataRow<int, CutProcess>> Cases() =>
        from seed in Enumerable.Range(1, 10)
        from process in Enum.GetValues<CutProcess>()
        select new TheoryDataRow<int, CutProcess>(seed, process);

    [Theory, MemberData(nameof(Cases))]
    public void Pieces_keep_gap_margin_and_leads_meet_demand_and_can_be_cut(int seed, CutProcess process)
    {
        Random chance = new(seed);
        IReadOnlyList<Piece> pieces = [.. Enumerable.Range(0, 2 + chance.Next(10)).Select(i => new Piece(
            Invariant($"p{i}"), new(50 + (chance.Next(11_000) / 10.0), 50 + (chance.Next(20_000) / 10.0)), 0, 1 + chance.Next(6), chance.Next(2) == 0))];
        RollRules rules = new(1370, 200_000, 10, 6, 300, 500, process, seed, 20);
        LayoutResult result = RollLayout.Solve(pieces, rules, default);

        SheetLayout sheet = Assert.Single(result.Sheets);
        RectMm bare = new(10, 300, 1350, sheet.Sheet.HeightMm - 800);
        Assert.True(result.IsWhole);
        Assert.Empty(SheetChecker.Faults(pieces, result.Sheets, 6, process is CutProcess.Guillotine, bare));
        Assert.Equal(sheet.Placements.Max(p => p.Place.TopMm) + 500, sheet.Sheet.HeightMm, 6);
    }

    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void A_grid_is_as_short_as_its_area(CutProcess process)
    {
        LayoutResult result = RollLayout.Solve([new("a", new(400, 300), 0, 12, true)], new(1200, 50_000, 0, 0, 0, 0, process), default);
        Assert.Equal(1200, Assert.Single(result.Sheets).Sheet.HeightMm, 6);
    }

    [Fact]
    public void A_long_panel_lies_along_the_roll() =>
        Assert.Equal(3000, Assert.Single(RollLayout.Solve([new("a", new(1000, 3000), 0, 1, true)], new(1200, 50_000, 0, 0, 0, 0, CutProcess.Free), default).Sheets).Sheet.HeightMm, 6);

    [Fact]
    public void A_wide_piece_that_may_turn_lies_the_short_way() =>
        Assert.Equal(400, Assert.Single(RollLayout.Solve([new("a", new(400, 1000), 0, 1, true)], new(1200, 50_000, 0, 0, 0, 0, CutProcess.Guillotine), default).Sheets).Sheet.HeightMm, 6);

    [Fact]
    public void Pieces_too_wide_or_beyond_the_roll_come_back()
    {
        LayoutResult result = RollLayout.Solve([new("wide", new(1300, 1300), 0, 1, true), new("long", new(1200, 1000), 0, 5, false)], new(1200, 3500, 0, 0, 0, 0, CutProcess.Free), default);
        Assert.Equal([("wide", 1), ("long", 2)], result.Unplaced.Select(u => (u.PieceId, u.Copies)));
        Assert.Equal(3, Assert.Single(result.Sheets).Placements.Count);
    }
}
