using Laydown.Instances.Rectangles;
using Laydown.Layout.FreePacking;
using Laydown.Layout.Guillotine;
using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;
using NetTopologySuite.Geometries;

namespace Laydown.Core.Tests.Layout.Guillotine;

/// <summary>Least strips, groups and offcuts: what counts after the cost.</summary>
public sealed class GuillotineRulesLawTests
{
    public static IEnumerable<TheoryDataRow<int, int, int>> Strips() =>
        from seed in Enumerable.Range(1, 5)
        from stages in (int[])[2, 3]
        from least in (int[])[90, 170]
        select new TheoryDataRow<int, int, int>(seed, stages, least);

    [Theory, MemberData(nameof(Strips))]
    public void No_strip_of_the_first_stage_is_narrower_than_its_least_width(int seed, int stages, int least)
    {
        RectInstance instance = GuillotineCase.Drawn(seed, 20, damaged: false);
        bool upright = seed % 2 == 0;
        RectProblem problem = GuillotineCase.Problem(instance, true, stages, upright, 40);
        RectLayout layout = GuillotineSearch.Solve(problem with { Rules = problem.Rules with { LeastStrip = least } }, new(seed, 500), null, default);
        Assert.Empty(RectChecker.Faults(instance, GuillotineCase.Bins(layout), new(true, Guillotine: true, stages, upright)));
        Assert.All(layout.Sheets, s => Assert.True(PartsInStrips(instance.Bins[s.Stock], s, upright, stages, least)));
    }

    [Fact]
    public void The_rule_of_strips_can_fail()
    {
        RectSheet sheet = new(0, 1, [new(0, new(0, 0, 50, 100), false), new(1, new(50, 0, 50, 60), false), new(1, new(50, 60, 50, 40), false)], []);
        Assert.True(PartsInStrips(new(150, 100, null, 1), sheet, true, 2, 50));
        Assert.False(PartsInStrips(new(150, 100, null, 1), sheet, true, 2, 60));
    }

    // A piece over the whole height is trimmed out of a wider strip; two of them want two strips, not one.
    [Fact]
    public void A_piece_narrower_than_the_least_strip_lies_in_a_strip_of_that_width()
    {
        RectLayout layout = GuillotineSearch.Solve(
            new([new("board", 100, 100, null, 1, [])], [new("a", 20, 100, 3, false)], new(CutProcess.Guillotine, 2, true, LeastStrip: 45)), new(1, 500), null, default);
        Assert.Equal([2, 1], layout.Sheets.SelectMany(s => Enumerable.Repeat(s.Spots.Count, s.Repeats)).OrderDescending());
        Assert.All(layout.Sheets, s => Assert.All(s.Spots, p => Assert.Equal(0, p.Place.X % 45)));
    }

    [Fact]
    public void A_group_shares_a_board_where_that_costs_nothing()
    {
        RectProblem problem = new(
            [new("board", 100, 100, null, 1, [])],
            [new("a", 100, 50, 1, false, 0), new("b", 100, 49, 1, false), new("c", 100, 48, 1, false), new("d", 100, 47, 1, false, 0)],
            new(CutProcess.Guillotine));
        RectLayout layout = GuillotineSearch.Solve(problem, new(1, 1000), null, default);
        Assert.Equal(2, layout.Sheets.Sum(s => s.Repeats));
        Assert.Contains(layout.Sheets, s => s.Spots.Select(p => p.Piece).Order().SequenceEqual([0, 3]));
    }

    // The set alone fills eight boards of 41; all but three boards are taken as repeated ones where no set is wanted.
    [Fact]
    public void A_group_is_left_out_of_sheets_that_are_repeated_many_times_and_is_kept_together_by_the_search()
    {
        RectProblem problem = new(
            [new("board", 100, 100, null, 1, [])],
            [new("a", 100, 10, 330, false), new("b", 100, 31, 8, false, 0), new("c", 100, 29, 8, false, 0), new("d", 100, 40, 8, false, 0)],
            new(CutProcess.Guillotine));
        (IReadOnlyList<RectSheet> repeated, RectProblem left) = PatternPeel.Of(problem, 1, default);
        Assert.True(PatternPeel.Wanted(problem));
        Assert.NotEmpty(repeated);
        Assert.All(repeated.SelectMany(s => s.Spots), p => Assert.Equal(0, p.Piece));
        Assert.All(left.Pieces.Skip(1), p => Assert.Equal(8, p.Copies));

        RectLayout layout = GuillotineSearch.Solve(problem, new(1, 2000), null, default);
        Assert.Equal(41, layout.Sheets.Sum(s => s.Repeats));
        Assert.Equal(7, Apart(problem, layout));
    }

    // Pieces with groups and without are the same rectangles. Cost counts first, so that one layout alone may have more apart: the sum of several has less.
    [Fact]
    public void Groups_are_nearer_together_than_where_nobody_asks_for_it()
    {
        (int asked, int unasked) = (0, 0);
        for (int seed = 1; seed <= 3; seed++)
        {
            RectInstance instance = GuillotineCase.Drawn(seed + 20, 24, damaged: false);
            RectProblem alone = GuillotineCase.Problem(instance, true);
            RectProblem grouped = alone with { Pieces = [.. alone.Pieces.Select((p, i) => p with { Group = (i % 6) - 1 })] };
            RectLayout layout = GuillotineSearch.Solve(grouped, new(seed, 6000), null, default);
            Assert.Empty(RectChecker.Faults(instance, GuillotineCase.Bins(layout), new(true, Guillotine: true)));
            asked += Apart(grouped, layout);
            unasked += Apart(grouped, GuillotineSearch.Solve(alone, new(seed, 6000), null, default));
        }

        Assert.True(asked < unasked, Invariant($"{asked} apart where asked for, {unasked} where not"));
    }

    // The small board leaves 100 x 40: 100 - 0.5 * 40 = 80. The large one leaves 100 x 100: 104 - 0.5 * 52 = 78.
    [Theory, InlineData(0, 100), InlineData(0.5, 104)]
    public void A_dearer_board_is_taken_where_its_one_large_offcut_is_worth_more(double worth, double cost)
    {
        RectProblem problem = new(
            [new("small", 100, 100, null, 100, []), new("large", 200, 100, null, 104, [])], [new("a", 100, 60, 1, false)],
            new(CutProcess.Guillotine, OffcutLeastSide: 20, OffcutWorth: worth));
        RectLayout layout = GuillotineSearch.Solve(problem, new(1, 2000), null, default);
        Assert.Equal(cost, problem.Stocks[Assert.Single(layout.Sheets).Stock].Cost);
    }

    // Pieces cut from a part of the board that reaches over its whole height: pushed together they leave the other part, and no layout leaves more at one side.
    [Theory, InlineData(1, false), InlineData(2, false), InlineData(3, false), InlineData(4, false), InlineData(1, true), InlineData(2, true), InlineData(3, true)]
    public void The_rest_of_the_emptiest_board_is_one_offcut_over_its_whole_side(int seed, bool free)
    {
        Random chance = new(seed);
        List<Box> parts = [new(0, 0, 60, 97)];
        while (parts.Count < 5)
        {
            Box one = parts.MaxBy(p => p.Area);
            parts.Remove(one);
            int at = (one.W > one.H ? one.W : one.H) * (30 + chance.Next(40)) / 100;
            parts.AddRange(one.W > one.H ? [one with { W = at }, one with { X = at, W = one.W - at }] : [one with { H = at }, one with { Y = at, H = one.H - at }]);
        }

        RectProblem problem = new(
            [new("board", 200, 97, null, 1, [])], [.. parts.Select((p, i) => new RectPiece(Invariant($"{i}"), p.W, p.H, 1, false))],
            new(free ? CutProcess.Free : CutProcess.Guillotine, OffcutLeastSide: 15));
        RectLayout layout = free ? FreeSearch.Solve(problem, new(seed, 300), null, default) : GuillotineSearch.Solve(problem, new(seed, 300), null, default);
        Box largest = Assert.Single(layout.Sheets).Offcuts[0];
        Assert.Equal((140, 97), (largest.W, largest.H));
        Assert.True(largest.X == 0 || largest.Right == 200);
        Assert.DoesNotContain(layout.Sheets[0].Spots, s => s.Place.Overlaps(largest));
    }

    private static int Apart(RectProblem problem, RectLayout layout)
    {
        (int Group, int Sheets)[] carried = [.. layout.Sheets.SelectMany(s =>
            s.Spots.Select(p => problem.Pieces[p.Piece].Group).Where(g => g >= 0).Distinct().Select(g => (g, s.Repeats)))];
        return carried.Sum(c => c.Sheets) - carried.Select(c => c.Group).Distinct().Count();
    }

    // Slabs of the first direction, joined to strips of the least width or more, each of which the stages left part: tried from the left over all ways to join.
    private static bool PartsInStrips(RectBin bin, RectSheet sheet, bool upright, int stages, int least)
    {
        Envelope[] boxes = [.. sheet.Spots.Select(s => new Envelope(s.Place.X, s.Place.Right, s.Place.Y, s.Place.Top))
            .OrderBy(b => upright ? b.MinX : b.MinY)];
        double Low(int i) => upright ? boxes[i].MinX : boxes[i].MinY;
        double High(int i) => upright ? boxes[i].MaxX : boxes[i].MaxY;
        double whole = upright ? bin.Width : bin.Height;

        // From a first box at a line cut so far: where the strip may end at the earliest, or nowhere.
        bool From(int first, double cut)
        {
            double end = 0;
            for (int last = first; last < boxes.Length; last++)
            {
                end = Math.Max(end, High(last));
                double next = last + 1 < boxes.Length ? Low(last + 1) : whole;
                if (next < end || (next - cut < least && last + 1 < boxes.Length) || (whole - cut < least))
                    continue;
                if (RectChecker.Stages(boxes[first..(last + 1)], !upright) is int more && more <= stages - 1
                    && (last + 1 == boxes.Length || From(last + 1, Math.Max(end, cut + least))))
                    return true;
            }

            return first == boxes.Length;
        }

        return From(0, 0);
    }
}
