using Laydown.Layout.Boards;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

public sealed class BoardLayoutLawTests
{
    public static IEnumerable<TheoryDataRow<int, CutProcess>> Cases() =>
        from seed in Enumerable.Range(1, 12)
        from process in Enum.GetValues<CutProcess>()
        select new TheoryDataRow<int, CutProcess>(seed, process);

    [Theory, MemberData(nameof(Cases))]
    public void Pieces_keep_gap_and_margin_meet_demand_and_can_be_cut(int seed, CutProcess process)
    {
        Random chance = new(seed);
        IReadOnlyList<Piece> pieces = Draw(chance, 2 + chance.Next(12));
        double gap = chance.Next(3) * 3.5, margin = chance.Next(3) * 5;
        BoardRules rules = new(new(1525, 3050), margin, gap, process, seed, 60);
        LayoutResult result = BoardLayout.Solve(pieces, rules, CancellationToken.None);

        Assert.True(result.IsWhole);
        Assert.Empty(SheetChecker.Faults(pieces, result.Sheets, gap, process is CutProcess.Guillotine));
        Assert.True(result.SheetCount >= BoardLayout.LeastBoards(pieces, rules));
    }

    [Fact]
    public void The_same_seed_gives_the_same_layout()
    {
        IReadOnlyList<Piece> pieces = Draw(new(5), 30);
        BoardRules rules = new(new(1220, 2440), 5, 4, CutProcess.Free, Seed: 9, Iterations: 80);
        Assert.Equal(Text(BoardLayout.Solve(pieces, rules, default)), Text(BoardLayout.Solve(pieces, rules, default)));
    }

    [Fact]
    public void Copies_are_numbered_once_over_all_sheets()
    {
        LayoutResult result = BoardLayout.Solve([new("a", new(600, 600), 0, 19, true)], new(new(1220, 2440), 0, 0, CutProcess.Free), default);
        IEnumerable<int> numbers = result.Sheets.SelectMany(s =>
            s.Placements.SelectMany(p => Enumerable.Range(0, s.Repeats).Select(r => p.Copy + (r * s.Placements.Count))));
        Assert.Equal(Enumerable.Range(1, 19), numbers.Order());
        Assert.Equal(3, result.SheetCount);
    }

    [Fact]
    public void Equal_boards_are_one_picture_with_repeats()
    {
        LayoutResult result = BoardLayout.Solve([new("a", new(600, 400), 0, 120, true)], new(new(1220, 2440), 0, 0, CutProcess.Guillotine), default);
        Assert.Equal(10, result.SheetCount);
        Assert.Single(result.Sheets);
    }

    [Fact]
    public void Ten_thousand_labels_are_laid_out()
    {
        IReadOnlyList<Piece> pieces = [new("a", new(86, 56), 3, 10_000, true), new("b", new(105, 74), 3, 1500, false)];
        LayoutResult result = BoardLayout.Solve(pieces, new(new(1220, 2440), 10, 2, CutProcess.Guillotine, 1, 5), default);
        Assert.DoesNotContain(SheetChecker.Faults(pieces, [result.Sheets[0]], 2, true), f => f.StartsWith("sheet", StringComparison.Ordinal));
        Assert.Equal(10_000, result.Sheets.Sum(s => s.Repeats * s.Placements.Count(p => p.PieceId == "a")));
    }

    [Fact]
    public void Three_thousand_labels_are_laid_out_for_the_router()
    {
        IReadOnlyList<Piece> pieces = [new("a", new(86, 56), 3, 2000, true), new("b", new(105, 74), 3, 1000, true)];
        LayoutResult result = BoardLayout.Solve(pieces, new(new(1220, 2440), 10, 2, CutProcess.Free), default);
        Assert.Equal(3000, result.Sheets.Sum(s => s.Repeats * s.Placements.Count));
        Assert.InRange(result.SheetCount, BoardLayout.LeastBoards(pieces, new(new(1220, 2440), 10, 2, CutProcess.Free)), 7);
    }

    [Fact]
    public void A_piece_exactly_as_large_as_the_printable_part_fits() =>
        Assert.True(BoardLayout.Solve([new("a", new(1200.1, 2420.1), 0, 2, false)], new(new(1220.1, 2440.1), 10, 8, CutProcess.Guillotine), default).IsWhole);

    [Fact]
    public void The_rest_of_a_board_is_offered_as_offcuts()
    {
        LayoutResult result = BoardLayout.Solve([new("a", new(1200, 1000), 0, 1, false)], new(new(1220, 2440), 10, 4, CutProcess.Guillotine), default);
        double area = Assert.Single(result.Sheets).Offcuts.Sum(o => o.Size.AreaM2);
        Assert.Equal(1.22 * (2.44 - 1.014), area, 6);
    }

    private static IReadOnlyList<Piece> Draw(Random chance, int count) => [.. Enumerable.Range(0, count).Select(i => new Piece(
        Invariant($"p{i}"), new(60 + (chance.Next(14_000) / 10.0), 60 + (chance.Next(14_000) / 10.0)), 3, 1 + chance.Next(9), chance.Next(2) == 0))];

    private static string Text(LayoutResult result) => string.Join('\n', result.Sheets.SelectMany(s => s.Placements.Select(p => Invariant($"{s.Repeats} {p}"))));
}
