using Laydown.Layout.Boards;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

/// <summary>Boards of several sizes, offcuts, places kept out, and pieces locked by hand.</summary>
public sealed class BoardStocksLawTests
{
    private static readonly BoardRules Rules = new(
        new(10, 10), 0, 4, CutProcess.Guillotine,
        Stocks:
        [
            new("whole", new(1220, 2440), null, 60, 10, [new(0, 1200, 60, 40)]), new("half", new(1220, 1220), 2, 33, 10), new("offcut", new(700, 500), 1, 2),
        ]);

    public static IEnumerable<TheoryDataRow<int, CutProcess>> Cases() =>
        from seed in Enumerable.Range(1, 6) from process in Enum.GetValues<CutProcess>() select new TheoryDataRow<int, CutProcess>(seed, process);

    [Theory, MemberData(nameof(Cases))]
    public void Pieces_keep_to_what_is_on_hand_and_off_places_kept_out(int seed, CutProcess process)
    {
        IReadOnlyList<Piece> pieces = Draw(new(seed), 3 + seed);
        LayoutResult result = BoardLayout.Solve(pieces, Rules with { Process = process, Iterations = 20 }, default);
        Assert.True(result.IsWhole);
        Assert.Empty(SheetChecker.Faults(pieces, result.Sheets, 4, process is CutProcess.Guillotine));
        Assert.All(result.Sheets, s => Assert.DoesNotContain(s.Placements, p => (s.KeepOuts ?? []).Any(k => Shares(k, p.Place))));
        Assert.InRange(result.Sheets.Where(s => s.StockId == "half").Sum(s => s.Repeats), 0, 2);
        Assert.InRange(result.Sheets.Where(s => s.StockId == "offcut").Sum(s => s.Repeats), 0, 1);
    }

    [Theory, MemberData(nameof(Cases))]
    public void Locked_pieces_stay_where_they_are_and_the_rest_goes_around_them(int seed, CutProcess process)
    {
        IReadOnlyList<Piece> pieces = [new("locked", new(300, 200), 3, 3, true), .. Draw(new(seed), 6)];
        Placement one = new("locked", 2, new(110 + seed, 400, 300, 200), false, Locked: true), two = new("locked", 1, new(600, 1700, 200, 300), true, Locked: true);
        SheetLayout started = new(new(1220, 2440), 10, [one, two, new("p0", 1, new(10, 10, 5, 5), false)], 1, [], StockId: "whole");
        List<int> told = [];
        LayoutResult result = BoardLayout.Solve(pieces, Rules with { Process = process }, [started], new(seed, 800), r => told.Add(r.SheetCount), default);

        Assert.True(result.IsWhole);
        Assert.Equal([one, two], result.Sheets[0].Placements.Where(p => p.Locked));
        Assert.True(result.Sheets[0].Placements.Count > 2);
        Assert.Empty(SheetChecker.Faults(pieces, result.Sheets, 4, process is CutProcess.Guillotine));
        Assert.NotEmpty(told);
        Assert.Equal([1, 2, 3], result.Sheets.SelectMany(s => s.Placements).Where(p => p.PieceId == "locked").Select(p => p.Copy).Order());
    }

    [Fact]
    public void A_started_sheet_that_takes_nothing_more_is_kept()
    {
        Placement locked = new("a", 1, new(10, 10, 300, 200), false, Locked: true);
        LayoutResult result = BoardLayout.Solve(
            [new("a", new(300, 200), 0, 1, true)], Rules, [new(new(1220, 1220), 10, [locked], 1, [], StockId: "half")], new(1, 10), null, default);
        Assert.Equal(locked, Assert.Single(Assert.Single(result.Sheets).Placements));
    }

    [Fact]
    public void The_cheap_offcut_is_taken_before_a_whole_board() =>
        Assert.Equal("offcut", Assert.Single(BoardLayout.Solve([new("a", new(300, 200), 0, 3, true)], Rules, default).Sheets).StockId);

    [Fact]
    public void What_no_board_on_hand_is_left_for_comes_back()
    {
        BoardRules few = Rules with { Stocks = [new("half", new(1220, 1220), 1, 33, 10)] };
        LayoutResult result = BoardLayout.Solve([new("a", new(700, 700), 0, 3, true), new("b", new(1300, 100), 0, 1, true)], few, default);
        Assert.Equal([("a", 2), ("b", 1)], result.Unplaced.Select(u => (u.PieceId, u.Copies)));
        Assert.Contains("no board left", result.Unplaced[0].Found, StringComparison.Ordinal);
        Assert.Contains("1200 × 1200 mm", result.Unplaced[1].Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void Stages_of_a_panel_saw_are_kept()
    {
        IReadOnlyList<Piece> pieces = Draw(new(3), 12);
        LayoutResult result = BoardLayout.Solve(pieces, new(new(1525, 3050), 10, 4, CutProcess.Guillotine, Iterations: 20, MostStages: 2), default);
        Assert.Empty(SheetChecker.Faults(pieces, result.Sheets, 4, true));
        foreach (SheetLayout sheet in result.Sheets)
            Assert.InRange(
                Laydown.Instances.Rectangles.RectChecker.Stages(
                    [.. sheet.Placements.Select(p => new NetTopologySuite.Geometries.Envelope(p.Place.XMm, p.Place.RightMm, p.Place.YMm, p.Place.TopMm))], false) ?? 99,
                0, 2);
    }

    private static bool Shares(RectMm a, RectMm b) => a.XMm < b.RightMm - 1e-6 && b.XMm < a.RightMm - 1e-6 && a.YMm < b.TopMm - 1e-6 && b.YMm < a.TopMm - 1e-6;

    private static IReadOnlyList<Piece> Draw(Random chance, int count) => [.. Enumerable.Range(0, count).Select(i => new Piece(
        Invariant($"p{i}"), new(60 + (chance.Next(9000) / 10.0), 60 + (chance.Next(9000) / 10.0)), 3, 1 + chance.Next(4), chance.Next(2) == 0))];
}
