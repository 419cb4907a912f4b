using Laydown.Layout.Guillotine;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.Guillotine;

public sealed class GuillotineSearchRefusalTests
{
    private static readonly RectStock Board = new("board", 100, 100, null, 1, []);
    private static readonly RectPiece Piece = new("piece", 10, 10, 1, false);

    public static IEnumerable<TheoryDataRow<string>> Wrong() => Problems().Select(p => new TheoryDataRow<string>(p.Told));

    [Theory, MemberData(nameof(Wrong))]
    public void A_problem_without_sense_is_refused_by_name(string told) => Assert.Contains(
        told,
        Assert.Throws<ArgumentException>(() => GuillotineSearch.Solve(Problems().Single(p => p.Told == told).Problem, new(1, 1), null, default)).Message,
        StringComparison.Ordinal);

    [Fact]
    public void Nothing_wanted_is_an_empty_layout() => Assert.Empty(GuillotineSearch.Solve(Of([Board], []), new(1, 10), null, default).Sheets);

    private static IEnumerable<(string Told, RectProblem Problem)> Problems()
    {
        yield return ("Stocks: found none", Of([], [Piece]));
        yield return ("board: found a side of 0", Of([Board with { Width = 0 }], [Piece]));
        yield return ("board: found -1 copies", Of([Board with { Copies = -1 }], [Piece]));
        yield return ("board: found a cost of NaN", Of([Board with { Cost = double.NaN }], [Piece]));
        yield return ("piece: found a side of -3", Of([Board], [Piece with { Height = -3 }]));
        yield return ("piece: found a side of 2000000000", Of([Board], [Piece with { Height = 2_000_000_000 }]));
        yield return ("piece: found 0 copies", Of([Board], [Piece with { Copies = 0 }]));
        RectProblem plain = Of([Board], [Piece]);
        yield return ("Least strip: found -1", plain with { Rules = plain.Rules with { LeastStrip = -1 } });
        yield return ("Greatest strip: found 50", plain with { Rules = plain.Rules with { MostStrip = 50 } });
        yield return ("board: found places kept out", Of([Board with { KeepOuts = [new(0, 0, 5, 5)] }], [Piece]) with { Rules = new(CutProcess.Guillotine, LeastStrip: 20) });
    }

    private static RectProblem Of(IReadOnlyList<RectStock> stocks, IReadOnlyList<RectPiece> pieces) => new(stocks, pieces, new(CutProcess.Guillotine));
}
