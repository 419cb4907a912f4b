using Laydown.Instances.Polygons;
using Laydown.Layout.Contours;
using NetTopologySuite.Geometries;

namespace Laydown.Core.Tests.Layout;

public sealed class ContourLayoutLawTests
{
    private static readonly double[] Square400 = [0, 0, 400, 0, 400, 400, 0, 400], Square300Inside = [50, 50, 350, 50, 350, 350, 50, 350];

    [Theory]
    [InlineData(1, 0.0, 0.0)]
    [InlineData(2, 6.5, 10.0)]
    [InlineData(3, 12.0, 0.0)]
    public void Stars_on_a_strip_keep_gap_and_margin_and_all_are_there(int seed, double gap, double margin)
    {
        PolygonInstance instance = Stars(seed, 14, [null, [0], [0, 180], [0, 90, 180, 270], [15, 200]]);
        ContourResult result = ContourLayout.Solve(ContourProblem.On(new ContourStrip(600, margin), gap, ContourData.Pieces(instance)), new(seed, 150), null, default);

        Assert.True(result.IsWhole);
        Assert.Empty(ContourData.Faults(instance, result, new([PolygonAsk.Rectangle(result.LengthMm, 600)], gap, margin, ContourData.SlackMm)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void On_an_offcut_with_a_hole_and_a_keep_out_nothing_lies_where_it_must_not(int seed)
    {
        PolygonInstance instance = Stars(seed, 12, [[0, 90, 180, 270]]);
        Polygon offcut = ContourData.Ring([100, 50, 1100, 50, 1100, 450, 700, 450, 600, 950, 100, 950], [300, 300, 420, 300, 420, 420, 300, 420]);
        Polygon clamp = ContourData.Polygon(100, 600, 220, 600, 220, 700, 100, 700);
        ContourStock[] stocks =
        [
            new("offcut", ContourData.Area(offcut), 1, 0, 8, [ContourData.Area(clamp)]),
            new("board", ContourData.Area(PolygonAsk.Rectangle(900, 600)), null, 10, 8),
        ];
        ContourResult result = ContourLayout.Solve(ContourProblem.On(stocks, 5, ContourData.Pieces(instance)), new(seed, 100), null, default);

        Assert.True(result.IsWhole);
        Assert.Contains(result.Sheets, s => s.StockId == "offcut");
        PolygonAsk ask = new(
            [.. result.Sheets.Select(s => s.StockId == "offcut" ? offcut : PolygonAsk.Rectangle(900, 600))], 5, 8, ContourData.SlackMm,
            [.. result.Sheets.Select(s => s.StockId == "offcut" ? (IReadOnlyList<Polygon>)[clamp] : [])]);
        Assert.Empty(ContourData.Faults(instance, result, ask));
        Assert.Equal(10 * result.Sheets.Count(s => s.StockId == "board"), result.Cost);
    }

    [Fact]
    public void Small_parts_go_into_the_holes_of_large_ones()
    {
        PolygonInstance instance = new("frames", 402, 0,
            [new(ContourData.Ring(Square400, Square300Inside), 2, [0]), new(ContourData.Polygon(0, 0, 130, 0, 130, 130, 0, 130), 8, [0])]);
        ContourResult result = ContourLayout.Solve(ContourProblem.On(new ContourStrip(402), 1, ContourData.Pieces(instance)), new(1, 4000), null, default);

        // Both frames and a gap: the eight parts find all their room within.
        Assert.Empty(ContourData.Faults(instance, result, new([PolygonAsk.Rectangle(result.LengthMm, 402)], 1, 0, ContourData.SlackMm)));
        Assert.InRange(result.LengthMm, 801, 802);
    }

    [Fact]
    public void Prints_of_one_direction_lie_at_one_angle()
    {
        PolygonInstance instance = Stars(4, 8, [[0, 90, 180, 270]]);
        ContourPiece[] pieces = [.. ContourData.Pieces(instance).Select((p, i) => p with { Direction = i % 2 == 0 ? "wall" : null })];
        ContourResult result = ContourLayout.Solve(ContourProblem.On(new ContourStrip(500), 2, pieces), new(1, 100), null, default);

        Assert.Single(result.Sheets[0].Spots.Where(s => pieces.Single(p => p.Id == s.PieceId).Direction is not null).Select(s => s.AngleDegrees).Distinct());
        Assert.Empty(ContourData.Faults(instance, result, new([PolygonAsk.Rectangle(result.LengthMm, 500)], 2, 0, ContourData.SlackMm)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_same_seed_and_iterations_give_the_same_layout_and_better_only_gets_better(int workers)
    {
        PolygonInstance instance = Stars(5, 12, [[0, 180]]);
        ContourProblem problem = ContourProblem.On(new ContourStrip(400), 3, ContourData.Pieces(instance));
        List<double> lengths = [];
        ContourResult one = ContourLayout.Solve(problem, new(7, 200, workers), r => lengths.Add(r.LengthMm), default);
        ContourResult other = ContourLayout.Solve(problem, new(7, 200, workers), null, default);

        Assert.Equal(one.Sheets[0].Spots, other.Sheets[0].Spots);
        Assert.Equal(lengths.OrderDescending(), lengths);
        Assert.Equal(one.LengthMm, lengths[^1]);
    }

    [Fact]
    public void A_stop_gives_the_best_so_far()
    {
        PolygonInstance instance = Stars(6, 10, [null]);
        using CancellationTokenSource stop = new();
        ContourResult? last = null;
        int calls = 0;
        ContourResult result = ContourLayout.Solve(
            ContourProblem.On(new ContourStrip(500), 0, ContourData.Pieces(instance)), new(),
            r =>
            {
                last = r;
                if (++calls == 4)
                    stop.Cancel();
            },
            stop.Token);

        Assert.Equal(4, calls);
        Assert.Equal(last!.Sheets[0].Spots, result.Sheets[0].Spots);
    }

    private static PolygonInstance Stars(int seed, int kinds, IReadOnlyList<double>?[] angles)
    {
        Random chance = new(seed);
        return new("stars", 0, 0, [.. Enumerable.Range(0, kinds).Select(i => new PolygonItem(ContourData.Star(chance), 1 + chance.Next(2), angles[i % angles.Length]))]);
    }
}
