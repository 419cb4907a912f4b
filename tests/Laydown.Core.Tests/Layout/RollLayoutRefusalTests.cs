using Laydown.Layout.Rolls;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

public sealed class RollLayoutRefusalTests
{
    private static readonly RollTerms Terms = new(5, 100, 100, CutProcess.Free);

    [Fact]
    public void A_press_that_takes_no_pair_of_the_rolls_is_told() => Assert.Contains(
        "two within 2000 mm",
        Assert.Throws<ArgumentException>(() => Solve([new("a", 1370, 50_000, Rolls: 2)], Terms with { SideBySide = 2, AcrossMm = 2000 })).Message,
        StringComparison.Ordinal);

    [Fact]
    public void One_roll_alone_makes_no_pair() =>
        Assert.Throws<ArgumentException>(() => Solve([new("a", 1370, 50_000)], Terms with { SideBySide = 2 }));

    [Fact]
    public void A_longest_section_under_the_least_is_refused() =>
        Assert.Throws<ArgumentException>(() => Solve([new("a", 1370, 50_000)], Terms with { LeastSectionMm = 500, LongestSectionMm = 400 }));

    [Fact]
    public void Three_rolls_side_by_side_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Solve([new("a", 1370, 50_000)], Terms with { SideBySide = 3 }));

    [Fact]
    public void A_piece_longer_than_the_longest_section_comes_back_with_what_would_fit()
    {
        UnplacedPiece piece = Assert.Single(Solve([new("a", 1370, 50_000)], Terms with { LongestSectionMm = 500 }).Unplaced);
        Assert.Equal(("p", 2), (piece.PieceId, piece.Copies));
        Assert.Contains("500 mm long", piece.Wanted, StringComparison.Ordinal);
    }

    private static RollPlan Solve(IReadOnlyList<RollStock> stocks, RollTerms terms) =>
        RollLayout.Solve([new("p", new(600, 700), 0, 2, true)], stocks, terms, new SearchRules(Iterations: 10), null, default);
}
