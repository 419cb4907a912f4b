using Laydown.Instances.Polygons;
using Laydown.Layout.Contours;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class ContourManyLawTests
{
    private static readonly double[] Arrow = [0, 40, 90, 40, 90, 0, 160, 70, 90, 140, 90, 100, 0, 100], Wedge = [0, 0, 120, 0, 20, 90];

    [Fact]
    public void Ten_thousand_copies_of_two_shapes_are_all_there_and_lie_apart_on_few_layouts_that_come_again_and_again()
    {
        PolygonInstance instance = Two(6000, 4000);
        ContourStock board = new("board", ContourData.Area(PolygonAsk.Rectangle(2440, 1220)), null, 30, 10);
        ContourProblem problem = ContourProblem.On([board], 5, ContourData.Pieces(instance));
        ContourResult first = ContourLayout.Solve(problem, new(1, 0), null, default), result = ContourLayout.Solve(problem, new(1, 400), null, default);

        Assert.Equal([("0", 6000), ("1", 4000)], Counted(result));
        Assert.InRange(SameSheets.Merged(result.Sheets).Count, 1, 8);
        AssertApart(instance, result, PolygonAsk.Rectangle(2440, 1220), 5, 10);

        // Squeezed boards are fewer than those filled as it comes, and no fewer than the area of the pieces takes.
        Assert.InRange(result.Sheets.Count, (int)Math.Ceiling(instance.ItemArea / (2420.0 * 1200)), first.Sheets.Count - 1);
    }

    [Fact]
    public void A_stock_that_runs_out_is_followed_by_the_next_and_what_none_takes_is_told()
    {
        PolygonInstance instance = Two(2500, 1500);
        ContourStock[] stocks =
        [
            new("offcut", ContourData.Area(PolygonAsk.Rectangle(1200, 800)), 3, 0, 10),
            new("board", ContourData.Area(PolygonAsk.Rectangle(2440, 1220)), 8, 30, 10),
        ];
        ContourResult result = ContourLayout.Solve(ContourProblem.On(stocks, 5, ContourData.Pieces(instance)), new(1, 0), null, default);

        Assert.Equal([("board", 8), ("offcut", 3)], result.Sheets.CountBy(s => s.StockId!).OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => (c.Key, c.Value)));
        Assert.Equal(4000, result.Sheets.Sum(s => s.Spots.Count) + result.Unplaced.Sum(u => u.Copies));
        Assert.False(result.IsWhole);
        Assert.Equal(240, result.Cost);
    }

    [Fact]
    public void Thousands_of_copies_on_a_strip_come_in_stretches_that_repeat()
    {
        PolygonInstance instance = Two(2000, 1400);
        ContourProblem problem = ContourProblem.On(new ContourStrip(1000, 10), 5, ContourData.Pieces(instance));
        ContourResult result = ContourLayout.Solve(problem, new(1, 100), null, default);

        Assert.True(result.IsWhole);
        Assert.Equal([("0", 2000), ("1", 1400)], Counted(result));
        Assert.Empty(ContourData.Faults(instance, result, new([PolygonAsk.Rectangle(result.LengthMm, 1000)], 5, 10, ContourData.SlackMm)));
        Assert.InRange(result.LengthMm, instance.ItemArea / 980, BoxFill.Fill(problem).LengthMm);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_last_board_is_pushed_together_so_that_one_rest_goes_over_a_whole_side(int seed)
    {
        PolygonInstance instance = Two(20, 10);
        ContourProblem problem = ContourProblem.On([new("board", ContourData.Area(PolygonAsk.Rectangle(1220, 2440)), null, 30, 10)], 5, ContourData.Pieces(instance));
        ContourResult before = ContourLayout.Solve(problem, new(seed, 0), null, default), after = LastBoard.Pushed(problem, before, 150, new(seed, 200));

        Assert.Equal(before.Sheets[0].Spots.Select(s => (s.PieceId, s.Copy)).Order(), after.Sheets[0].Spots.Select(s => (s.PieceId, s.Copy)).Order());
        AssertApart(instance, after, PolygonAsk.Rectangle(1220, 2440), 5, 10);

        // The rest is the larger of the two that a straight cut beyond all pieces leaves; four fifths of the board would remain of pieces without gaps.
        double Rest(ContourResult result)
        {
            RectMm[] boxes = [.. result.Sheets[0].Spots.Select(s => PieceBox.Of(problem.Pieces.Single(p => p.Id == s.PieceId), s))];
            return Math.Max((1220 - boxes.Max(b => b.RightMm)) * 2440, (2440 - boxes.Max(b => b.TopMm)) * 1220);
        }

        Assert.True(Rest(after) > Rest(before));
        Assert.InRange(Rest(after) / (1220 * 2440), 0.75, 1 - (instance.ItemArea / (1220 * 2440)));
    }

    [Fact]
    public void Copies_over_what_is_wanted_lie_between_and_beside_the_others()
    {
        PolygonInstance instance = Two(20, 10);
        ContourStock board = new("board", ContourData.Area(PolygonAsk.Rectangle(1220, 900)), null, 30, 10);
        ContourProblem onBoards = ContourProblem.On([board], 5, ContourData.Pieces(instance));
        ContourProblem onStrip = ContourProblem.On(new ContourStrip(1200, 10), 5, ContourData.Pieces(Two(1, 1)));
        Dictionary<string, int> over = new() { ["1"] = 7 };

        ContourResult made = ContourLayout.Solve(onBoards, new(1, 0), null, default), filled = ContourOvers.Filled(onBoards, made, over);
        Assert.Equal(made.Cost, filled.Cost);
        Assert.Equal([("0", 20), ("1", 17)], Counted(filled));
        AssertApart(instance, filled, PolygonAsk.Rectangle(1220, 900), 5, 10);

        // One arrow uses a strip of its own length; above it there is room for all.
        ContourResult strip = ContourLayout.Solve(onStrip, new(1, 0), null, default), more = ContourOvers.Filled(onStrip, strip, over);
        Assert.Equal(strip.LengthMm, more.LengthMm);
        Assert.Equal([("0", 1), ("1", 8)], Counted(more));
        Assert.Empty(ContourData.Faults(Two(1, 8), more, new([PolygonAsk.Rectangle(more.LengthMm, 1200)], 5, 10, ContourData.SlackMm)));
    }

    private static PolygonInstance Two(int arrows, int wedges) => new("two", 0, 0,
        [new(ContourData.Polygon(Arrow), arrows, [0, 90, 180, 270]), new(ContourData.Polygon(Wedge), wedges, [0, 90, 180, 270])]);

    private static IEnumerable<(string, int)> Counted(ContourResult result) => result.Sheets.SelectMany(s => s.Spots)
        .GroupBy(s => s.PieceId).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (g.Key, g.Select(s => s.Copy).Distinct().Count()));

    // Boards that carry the same are judged once.
    private static void AssertApart(PolygonInstance instance, ContourResult result, NetTopologySuite.Geometries.Polygon board, double gap, double margin)
    {
        ContourSheet[] sheets = [.. SameSheets.Merged(result.Sheets).Select(m => m.Sheet)];
        PolygonInstance on = instance with { Items = [.. instance.Items.Select((item, i) => item with { Copies = sheets.Sum(s => s.Spots.Count(p => p.PieceId == Invariant($"{i}"))) })] };
        Assert.Empty(ContourData.Faults(on, result with { Sheets = sheets }, new([.. sheets.Select(_ => board)], gap, margin, ContourData.SlackMm)));
    }
}
