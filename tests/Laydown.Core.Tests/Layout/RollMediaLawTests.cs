using Laydown.Layout.Rolls;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

/// <summary>Two rolls of different media: pieces that are tied to one lie there and nowhere else.</summary>
public sealed class RollMediaLawTests
{
    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void Pieces_lie_on_the_roll_they_are_tied_to_and_the_others_even_the_lengths_out(CutProcess process)
    {
        RollStock[] rolls = [new("film", 1000, 50_000), new("mesh", 1000, 50_000)];
        Piece[] pieces = [new("a", new(500, 400), 0, 8, false), new("b", new(500, 400), 0, 2, false), new("c", new(500, 400), 0, 6, false)];
        RollTerms terms = new(0, 0, 0, process, SideBySide: 2, Media: new Dictionary<string, string> { ["a"] = "film", ["b"] = "mesh" });
        RollPlan plan = RollLayout.Solve(pieces, rolls, terms, new(1, 600), null, default);

        Assert.Empty(plan.Unplaced);
        Assert.Equal(["film", "mesh"], plan.Rolls);
        Assert.All(plan.Strips, s => Assert.DoesNotContain(s.Layout.Placements, p => p.PieceId == (s.StockId == "film" ? "b" : "a")));

        // 16 pieces, two abreast on each of two rolls: four rows of 400 mm are the least there can be, and tied pieces leave room for it.
        Assert.Equal(1600, plan.AdvanceMm, 6);
    }

    [Fact]
    public void A_piece_tied_to_a_roll_that_is_not_on_the_press_is_told_without_a_place()
    {
        RollTerms terms = new(0, 0, 0, CutProcess.Free, Media: new Dictionary<string, string> { ["a"] = "film", ["b"] = "mesh" });
        RollPlan plan = RollLayout.Solve(
            [new("a", new(500, 400), 0, 8, false), new("b", new(500, 400), 0, 2, false)], [new("film", 1000, 50_000), new("mesh", 1000, 50_000)], terms, new(1, 600), null, default);
        Assert.Equal(("b", 2), (Assert.Single(plan.Unplaced).PieceId, plan.Unplaced[0].Copies));
        Assert.Equal("film", Assert.Single(plan.Strips).StockId);
    }

    [Fact]
    public void A_search_cut_edge_to_edge_tells_what_it_finds_on_the_way_and_ends_at_the_least_length()
    {
        Random chance = new(5);
        Piece[] pieces = [.. Enumerable.Range(0, 14).Select(i => new Piece(Invariant($"p{i}"), new(80 + chance.Next(600), 80 + chance.Next(600)), 0, 1 + chance.Next(4), true))];
        List<double> told = [];
        RollPlan plan = RollLayout.Solve(pieces, [new("r", 1300, 100_000)], new(5, 0, 0, CutProcess.Guillotine), new(1, 6000), p => told.Add(p.AdvanceMm), default);
        Assert.Equal(told.OrderByDescending(t => t), told);
        Assert.Equal(plan.AdvanceMm, told[^1]);

        // A row of equal pieces that fills the width is as short as can be: the search ends by itself, however much work it may do.
        RollPlan full = RollLayout.Solve([new("a", new(500, 300), 0, 10, false)], [new("r", 1000, 50_000)], new(0, 0, 0, CutProcess.Guillotine), new(1), null, default);
        Assert.Equal(1500, full.AdvanceMm, 6);
    }

    [Fact]
    public void Workers_with_chances_of_their_own_give_the_same_plan_every_time()
    {
        Random chance = new(8);
        Piece[] pieces = [.. Enumerable.Range(0, 12).Select(i => new Piece(Invariant($"p{i}"), new(80 + chance.Next(600), 80 + chance.Next(600)), 0, 1 + chance.Next(3), true))];
        RollPlan Once(int workers) => RollLayout.Solve(pieces, [new("r", 1300, 100_000)], new(5, 0, 0, CutProcess.Guillotine), new SearchRules(1, 1500, workers), null, default);
        Assert.Equal(Once(2).Strips[0].Layout.Placements, Once(2).Strips[0].Layout.Placements);
        Assert.True(Once(2).AdvanceMm <= Once(1).AdvanceMm + 1e-9);
    }
}
