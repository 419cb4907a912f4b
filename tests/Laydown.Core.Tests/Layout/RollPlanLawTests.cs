using Laydown.Layout.Rolls;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class RollPlanLawTests
{
    private static readonly SearchRules Short = new(1, 600);

    public static IEnumerable<TheoryDataRow<int, CutProcess, int>> Cases() =>
        from seed in Enumerable.Range(1, 4)
        from process in Enum.GetValues<CutProcess>()
        from rolls in (int[])[1, 2]
        select new TheoryDataRow<int, CutProcess, int>(seed, process, rolls);

    [Theory, MemberData(nameof(Cases))]
    public void Every_piece_lies_once_on_a_roll_between_leads_and_sections_keep_their_bounds(int seed, CutProcess process, int rolls)
    {
        IReadOnlyList<Piece> pieces = Draw(seed, 900);
        RollTerms terms = new(6, 300, 500, process, LeastSectionMm: 400, LongestSectionMm: 1500, SideBySide: rolls, CentreGapMm: 40);
        RollPlan plan = RollLayout.Solve(pieces, [new("narrow", 1370, 100_000, 0, 10, Rolls: 2), new("wide", 1600, 100_000, 0, 10)], terms, Short, null, default);

        Assert.Empty(plan.Unplaced);
        Assert.InRange(plan.Strips.Count, 1, rolls);
        Assert.Equal(pieces.Sum(p => p.Quantity), plan.Strips.Sum(s => s.Layout.Placements.Count));
        Assert.Equal(plan.AdvanceMm, plan.Strips.Max(s => s.Layout.Sheet.HeightMm), 6);
        foreach (SheetLayout sheet in plan.Strips.Select(s => s.Layout))
        {
            IReadOnlyList<Piece> own = [.. pieces.Select(p => p with { Quantity = sheet.Placements.Count(q => q.PieceId == p.Id) }).Where(p => p.Quantity > 0)];
            Assert.Empty(SheetChecker.Faults(own, [sheet], 6, process is CutProcess.Guillotine, new(10, 300, sheet.Sheet.WidthMm - 20, sheet.Sheet.HeightMm - 800)));
            AreSections(sheet, terms);
        }

        // No piece twice: copies are numbered over both rolls.
        Assert.Equal(pieces.Sum(p => p.Quantity), plan.Strips.SelectMany(s => s.Layout.Placements).Select(p => (p.PieceId, p.Copy)).Distinct().Count());
    }

    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void Two_rolls_side_by_side_share_the_length(CutProcess process)
    {
        RollTerms terms = new(0, 0, 0, process, SideBySide: 2, PricePerMetre: 1);
        RollPlan plan = RollLayout.Solve([new("a", new(500, 700), 0, 12, false)], [new("r", 1000, 50_000, Rolls: 2)], terms, Short, null, default);
        Assert.Equal((2100.0, 2), (plan.AdvanceMm, plan.Strips.Count));
        Assert.Equal(2.1, plan.Cost, 6);
    }

    [Fact]
    public void A_piece_wider_than_the_narrow_roll_lies_on_the_wide_one()
    {
        RollTerms terms = new(0, 0, 0, CutProcess.Free, SideBySide: 2);
        RollPlan plan = RollLayout.Solve(
            [new("wide", new(1400, 500), 0, 2, false), new("small", new(500, 500), 0, 4, false)], [new("n", 1000, 50_000), new("w", 1500, 50_000)], terms, Short, null, default);
        Assert.Equal("w", Assert.Single(plan.Strips, s => s.Layout.Placements.Any(p => p.PieceId == "wide")).StockId);
        Assert.Equal(1000, plan.AdvanceMm, 6);
    }

    // Two of 700 mm lie beside each other on 1400 mm without waste; on 1600 mm they leave 200 mm bare, on 1000 mm 300 mm.
    [Fact]
    public void The_roll_is_chosen_that_leaves_the_least_bare_and_with_prices_the_cheapest()
    {
        RollTerms terms = new(0, 0, 0, CutProcess.Guillotine);
        IReadOnlyList<Piece> pieces = [new("a", new(700, 900), 0, 10, false)];
        IReadOnlyList<RollStock> stocks = [new("1600", 1600, 50_000), new("1400", 1400, 50_000), new("1000", 1000, 50_000)];
        Assert.Equal("1400", Assert.Single(RollLayout.Solve(pieces, stocks, terms, Short, null, default).Strips).StockId);

        IReadOnlyList<RollStock> priced = [stocks[0] with { PricePerM2 = 4 }, stocks[1] with { PricePerM2 = 5 }, stocks[2] with { PricePerM2 = 3 }];
        RollPlan cheapest = RollLayout.Solve(pieces, priced, terms, Short, null, default);
        Assert.Equal("1000", Assert.Single(cheapest.Strips).StockId);
        Assert.Equal(27, cheapest.Cost, 6);
    }

    [Fact]
    public void Lead_in_and_lead_out_count_as_waste()
    {
        RollPlan plan = RollLayout.Solve([new("a", new(1000, 500), 0, 2, false)], [new("r", 1000, 50_000)], new(0, 300, 200, CutProcess.Free), Short, null, default);
        Assert.Equal((1500.0, 0.5), (plan.AdvanceMm, Math.Round(plan.WasteM2, 9)));
    }

    [Fact]
    public void Cuts_across_go_between_sections_in_the_middle_of_the_gap()
    {
        RollPlan plan = RollLayout.Solve([new("a", new(1000, 500), 0, 3, false)], [new("r", 1000, 50_000)], new(10, 100, 0, CutProcess.Guillotine), Short, null, default);
        Assert.Equal([605.0, 1115.0], plan.Strips[0].Layout.CutsAcrossMm!);
    }

    [Fact]
    public void Plans_told_on_the_way_get_cheaper_and_the_same_seed_gives_the_same_plan()
    {
        IReadOnlyList<Piece> pieces = Draw(9, 1000);
        List<RollPlan> told = [];
        RollPlan Once(Action<RollPlan>? better) => RollLayout.Solve(pieces, [new("a", 1370, 100_000), new("b", 1520, 100_000)], new(5, 0, 0, CutProcess.Free), new(3, 2000), better, default);
        RollPlan plan = Once(told.Add);
        Assert.All(told.Zip(told.Skip(1)), p => Assert.True(p.Second.Cost < p.First.Cost));
        Assert.Equal(plan.Cost, told[^1].Cost);
        Assert.Equal(plan.Strips[0].Layout.Placements, Once(null).Strips[0].Layout.Placements);
    }

    private static void AreSections(SheetLayout sheet, RollTerms terms)
    {
        double[] ends = [terms.LeadInMm - (terms.GapMm / 2), .. sheet.CutsAcrossMm!, sheet.Sheet.HeightMm - terms.LeadOutMm + (terms.GapMm / 2)];
        Assert.All(ends.Zip(ends.Skip(1)), p => Assert.InRange(p.Second - p.First - terms.GapMm, terms.LeastSectionMm - 1e-6, terms.LongestSectionMm + 1e-6));
        Assert.All(sheet.CutsAcrossMm!, c => Assert.DoesNotContain(sheet.Placements, p => p.Place.YMm < c + (terms.GapMm / 2) - 1e-6 && p.Place.TopMm > c - (terms.GapMm / 2) + 1e-6));
    }

    private static IReadOnlyList<Piece> Draw(int seed, int most)
    {
        Random chance = new(seed);
        return [.. Enumerable.Range(0, 5 + chance.Next(8)).Select(i => new Piece(
            Invariant($"p{i}"), new(50 + chance.Next(most), 50 + chance.Next(most)), 0, 1 + chance.Next(4), chance.Next(2) == 0))];
    }
}
