using Laydown.Geometry.Shapes;
using Laydown.Layout.Contours;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class ContourLayoutRefusalTests
{
    private static readonly ContourPiece Piece = new("a", Shape.Of(new RectMm(0, 0, 100, 50)), 1, ContourAngles.AsDrawn);
    private static readonly ContourStrip Strip = new(200);

    public static IEnumerable<TheoryDataRow<ContourProblem, string>> Wrong() =>
    [
        new(ContourProblem.On(Strip, -1, Piece), "Gap: found -1 mm"),
        new(ContourProblem.On(Strip, double.NaN, Piece), "Gap: found NaN mm"),
        new(ContourProblem.On(Strip, 0), "found no pieces"),
        new(ContourProblem.On(Strip, 0, Piece, Piece), "Piece a: found the id twice"),
        new(ContourProblem.On(Strip, 0, Piece with { Copies = 0 }), "a: found 0 copies"),
        new(ContourProblem.On(Strip, 0, Piece with { Area = Shape.Of(new RectMm(0, 0, 1, 1)).Offset(-5) }), "a: found no area"),
        new(ContourProblem.On(new ContourStrip(20, 10), 0, Piece), "Strip: found width 20 mm, margin 10 mm"),
        new(new([Piece], 0, null, []), "wanted a strip or boards"),
        new(new([Piece], 0, Strip, [new("b", Piece.Area, 1, 1)]), "wanted a strip or boards"),
        new(ContourProblem.On([new("b", Piece.Area, 1, -1)], 0, Piece), "b: found 1 copies, cost -1"),
    ];

    [Theory, MemberData(nameof(Wrong))]
    public void What_no_caller_should_ask_is_refused_in_words(ContourProblem problem, string words) =>
        Assert.Contains(words, Assert.Throws<ArgumentException>(() => ContourLayout.Solve(problem, new(Iterations: 0), null, default)).Message, StringComparison.Ordinal);

    [Fact]
    public void Angles_need_at_least_one_number()
    {
        Assert.Throws<ArgumentException>(() => ContourAngles.Of());
        Assert.Throws<ArgumentException>(() => ContourAngles.Of(double.NaN));
        Assert.Equal([0, 270], ContourAngles.Of(-90, 360).Degrees);
    }

    [Fact]
    public void A_piece_too_large_for_strip_or_boards_comes_back_unplaced()
    {
        ContourPiece large = new("large", Shape.Of(new RectMm(0, 0, 300, 250)), 2, ContourAngles.QuarterTurns);
        ContourResult strip = ContourLayout.Solve(ContourProblem.On(Strip, 0, Piece, large), new(Iterations: 8), null, default);
        ContourResult boards = ContourLayout.Solve(
            ContourProblem.On([new("b", Shape.Of(new RectMm(0, 0, 200, 200)), null, 1)], 0, Piece, large), new(Iterations: 8), null, default);

        foreach (ContourResult result in (ContourResult[])[strip, boards])
        {
            Assert.Equal("a", Assert.Single(Assert.Single(result.Sheets).Spots).PieceId);
            Assert.Equal(("large", 2), (Assert.Single(result.Unplaced).PieceId, result.Unplaced[0].Copies));
        }
    }
}
