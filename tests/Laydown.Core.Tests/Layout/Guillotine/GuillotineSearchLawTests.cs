using Laydown.Instances.Rectangles;
using Laydown.Layout.Guillotine;
using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using NetTopologySuite.Geometries;

namespace Laydown.Core.Tests.Layout.Guillotine;

public sealed class GuillotineSearchLawTests
{
    public static IEnumerable<TheoryDataRow<int, bool, int, bool>> Cases() =>
        from seed in Enumerable.Range(1, 4)
        from mayTurn in (bool[])[false, true]
        from stages in (int[])[0, 2, 3]
        from damaged in (bool[])[false, true]
        where !(damaged && stages > 0)
        select new TheoryDataRow<int, bool, int, bool>(seed, mayTurn, stages, damaged);

    [Theory, MemberData(nameof(Cases))]
    public void Pieces_lie_apart_from_each_other_and_from_damage_on_boards_there_are_and_can_be_cut_in_the_stages_allowed(
        int seed, bool mayTurn, int stages, bool damaged)
    {
        RectInstance instance = GuillotineCase.Drawn(seed, 25, damaged);
        bool upright = seed % 2 == 0;
        RectLayout layout = GuillotineSearch.Solve(GuillotineCase.Problem(instance, mayTurn, stages, upright, 40), new(seed, 300), null, default);
        RectAsk ask = new(mayTurn, Guillotine: true, stages, stages > 0 ? upright : null);
        Assert.Empty(RectChecker.Faults(instance, GuillotineCase.Bins(layout), ask));
        Assert.All(layout.Missing, m => Assert.Equal(0, m));
    }

    [Theory, InlineData(1), InlineData(2)]
    public void Offcuts_are_bare_wide_enough_and_come_off_with_edge_to_edge_cuts(int seed)
    {
        RectInstance instance = GuillotineCase.Drawn(seed, 12, damaged: false);
        RectLayout layout = GuillotineSearch.Solve(GuillotineCase.Problem(instance, true, offcutLeast: 50), new(seed, 2000), null, default);
        Assert.Contains(layout.Sheets, s => s.Offcuts.Count > 0);
        foreach (RectSheet sheet in layout.Sheets)
        {
            Envelope[] boxes = [.. sheet.Spots.Select(s => s.Place).Concat(sheet.Offcuts).Select(Of)];
            Assert.NotNull(RectChecker.Stages(boxes, true) ?? RectChecker.Stages(boxes, false));
            Assert.All(sheet.Offcuts, o => Assert.True(Math.Min(o.W, o.H) >= 50));
            Assert.DoesNotContain(sheet.Offcuts, o => sheet.Spots.Any(s => s.Place.Overlaps(o)));
        }
    }

    [Fact]
    public void The_same_seed_and_iterations_give_the_same_layout_with_two_workers()
    {
        RectProblem problem = GuillotineCase.Problem(GuillotineCase.Drawn(9, 40, true), true, offcutLeast: 40);
        string Text() => string.Join('\n', GuillotineSearch.Solve(problem, new(3, 4500, Workers: 2), null, default).Sheets
            .SelectMany(s => s.Spots.Select(p => Invariant($"{s.Stock} {s.Repeats} {p}"))));
        Assert.Equal(Text(), Text());
    }

    [Fact]
    public void Every_answer_told_is_better_than_the_last_and_the_last_is_the_result()
    {
        RectInstance instance = GuillotineCase.Drawn(5, 40, false);
        List<(int Missing, double Cost)> told = [];
        RectLayout result = GuillotineSearch.Solve(
            GuillotineCase.Problem(instance, true), new(1, 3000), l => told.Add((l.Missing.Sum(), GuillotineCase.Cost(instance, l))), default);
        Assert.True(told.Count > 1);
        Assert.Equal(told.OrderByDescending(t => t.Missing).ThenByDescending(t => t.Cost), told);
        Assert.Equal(told[^1].Cost, GuillotineCase.Cost(instance, result), 6);
    }

    [Fact]
    public void A_stop_gives_the_first_answer_whole()
    {
        RectInstance instance = GuillotineCase.Drawn(5, 40, false);
        RectLayout result = GuillotineSearch.Solve(GuillotineCase.Problem(instance, true), new(), null, new CancellationToken(canceled: true));
        Assert.Empty(RectChecker.Faults(instance, GuillotineCase.Bins(result), new(true, Guillotine: true)));
    }

    [Fact]
    public void What_no_board_is_left_for_is_told_as_missing()
    {
        RectProblem problem = new(
            [new("one", 10, 10, 1, 1, [])], [new("a", 10, 6, 2, false), new("b", 10, 4, 1, false), new("c", 11, 1, 1, true)], new(Laydown.Layout.Sheets.CutProcess.Guillotine));
        RectLayout layout = GuillotineSearch.Solve(problem, new(1, 500), null, default);
        Assert.Equal([1, 0, 1], layout.Missing);
    }

    // The jigsaw is cut from four full boards, so that four is least.
    [Fact]
    public void A_jigsaw_of_full_boards_is_found_again()
    {
        RectPiece[] pieces = [new("a", 60, 100, 4, false), new("b", 40, 55, 4, false), new("c", 25, 45, 4, false), new("d", 15, 45, 4, false)];
        RectLayout layout = GuillotineSearch.Solve(
            new([new("board", 100, 100, null, 1, [])], pieces, new(Laydown.Layout.Sheets.CutProcess.Guillotine)), new(1, 20_000), null, default);
        Assert.Equal(4, layout.Sheets.Sum(s => s.Repeats));
    }

    [Theory, InlineData(1, 0), InlineData(2, 2), InlineData(3, 3)]
    public void Whatever_is_put_in_and_taken_out_nodes_tile_their_sheets(int seed, int stages)
    {
        CutJob job = new(GuillotineCase.Problem(GuillotineCase.Drawn(seed, 15, seed == 1), true, stages), seed);
        CutForest forest = new(job);
        Chance chance = new(seed);
        CutFill fill = new(job, chance);
        for (int i = 0; i < 300; i++)
        {
            for (int n = chance.Below(6); n > 0 && forest.Live.Length > 0; n--)
                forest.TakeOut(forest.Live[chance.Below(forest.Live.Length)]);
            fill.Run(forest, chance.Below(4) == 0 ? 0 : long.MaxValue);
            Assert.Equal(job.Types.Sum(t => (long)t.Copies), forest.MissingCount + Pieces(forest));
            foreach (int slot in forest.Open)
                Assert.Equal(
                    job.Parts[forest.SheetAt(slot).Stock][forest.SheetAt(slot).Way].Sum(p => p.Place.Area), Roots(forest, slot).Sum(r => Tiled(forest, r)));
        }
    }

    private static int Pieces(CutForest forest)
    {
        int sum = 0;
        foreach (int slot in forest.Open)
            sum += forest.SheetAt(slot).Pieces;
        return sum;
    }

    private static IEnumerable<int> Roots(CutForest forest, int slot)
    {
        for (int root = forest.SheetAt(slot).Root; root >= 0; root = forest[root].Next)
            yield return root;
    }

    // Area of a node, after its children were seen to fill it.
    private static long Tiled(CutForest forest, int node)
    {
        CutNode n = forest[node];
        if (n.Kind != CutKind.Part)
            return n.Area;

        (int along, int bare) = (0, 0);
        for (int child = n.First; child >= 0; child = forest[child].Next)
        {
            CutNode c = forest[child];
            Assert.Equal(node, c.Parent);
            Assert.Equal(n.Upright ? n.H : n.W, n.Upright ? c.H : c.W);
            along += n.Upright ? c.W : c.H;
            bare += c.Kind == CutKind.Bare ? 1 : 0;
            Assert.Equal(c.Area, Tiled(forest, child));
        }

        Assert.Equal(n.Upright ? n.W : n.H, along);
        Assert.Equal(n.Rest >= 0 ? 1 : 0, bare);
        return n.Area;
    }

    private static Envelope Of(Box b) => new(b.X, b.Right, b.Y, b.Top);
}
