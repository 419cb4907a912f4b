using Laydown.Layout.Boards;
using Laydown.Layout.Sheets;
using static Laydown.Core.Tests.Layout.LayoutData;

namespace Laydown.Core.Tests.Layout;

/// <summary>Counts of boards against the published ones: tests/data/layout/README.md names instances and source.</summary>
public sealed class BoardLayoutPublishedTests(ITestOutputHelper output)
{
    private static readonly ILookup<string, string[]> Items = Rows("2bp-classes-items.csv").ToLookup(r => r[0]);

    // What the search may lose over all seventy instances, percent of the published sum; and on one instance, boards.
    [Theory]
    [InlineData(CutProcess.Free, false, 4, 1.5)]
    [InlineData(CutProcess.Free, true, 5, 1.5)]
    [InlineData(CutProcess.Guillotine, false, 6, 2.5)]
    [InlineData(CutProcess.Guillotine, true, 7, 2.5)]
    public void Board_counts_lie_between_the_lower_bound_and_the_stated_excess(CutProcess process, bool mayTurn, int column, double excessPercent)
    {
        (int ours, int published, int exact, int count) = (0, 0, 0, 0);
        foreach (string[] row in Rows("2bp-classes-boards.csv"))
        {
            IReadOnlyList<Piece> pieces = [.. Items[row[0]].Select((r, i) => new Piece(Invariant($"{i}"), new(Number(r[1]), Number(r[2])), 0, 1, mayTurn))];
            BoardRules rules = new(new(Number(row[1]), Number(row[2])), 0, 0, process, Iterations: process is CutProcess.Guillotine ? 20 : 150);
            LayoutResult result = BoardLayout.Solve(pieces, rules, CancellationToken.None);
            int best = Number(row[column]);

            Assert.True(result.IsWhole);
            Assert.Empty(SheetChecker.Faults(pieces, result.Sheets, 0, process is CutProcess.Guillotine));
            Assert.InRange(result.SheetCount, Math.Max(Number(row[3]), BoardLayout.LeastBoards(pieces, rules)), best + 1 + (best / 10));
            (ours, published, exact, count) = (ours + result.SheetCount, published + best, exact + (result.SheetCount <= best ? 1 : 0), count + 1);
        }

        output.WriteLine(Invariant($"{process}, turning {mayTurn}: {ours} boards for {published} published, {exact} of {count} as published"));
        Assert.Equal(70, count);
        Assert.InRange(ours, published * 0.99, published * (1 + (excessPercent / 100)));
    }
}
