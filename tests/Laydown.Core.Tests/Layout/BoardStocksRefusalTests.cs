using Laydown.Layout.Boards;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

public sealed class BoardStocksRefusalTests
{
    private static readonly IReadOnlyList<Piece> Pieces = [new("a", new(300, 200), 0, 1, true)];

    public static IEnumerable<TheoryDataRow<BoardStock[]>> Wrong() =>
    [
        new([]),
        new([new("a", new(500, 500), 1, 1), new("a", new(600, 500), 1, 1)]),
        new([new("a", new(500, 500), -1, 1)]),
        new([new("a", new(500, 500), 1, -1)]),
        new([new("a", new(500, 500), 1, double.NaN)]),
        new([new("a", new(500, 500), 1, 1, 250)]),
    ];

    [Theory, MemberData(nameof(Wrong), DisableDiscoveryEnumeration = true)]
    public void Boards_without_sense_are_refused(BoardStock[] stocks) => Assert.ThrowsAny<ArgumentException>(
        () => BoardLayout.Solve(Pieces, new(new(500, 500), 0, 0, CutProcess.Guillotine, Stocks: stocks), default));

    [Theory, InlineData("a", 2), InlineData("b", 1)]
    public void More_locked_than_wanted_is_refused_by_name(string id, int repeats)
    {
        SheetLayout started = new(new(500, 500), 0, [new(id, 1, new(0, 0, 300, 200), false, Locked: true)], repeats, []);
        Assert.StartsWith(
            id + ": found more copies locked",
            Assert.Throws<ArgumentException>(
                () => BoardLayout.Solve(Pieces, new(new(500, 500), 0, 0, CutProcess.Guillotine), [started], new(1, 1), null, default)).Message,
            StringComparison.Ordinal);
    }
}
