using Laydown.Layout.Hands;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.Hands;

public sealed class LayoutEditLawTests
{
    private static readonly IReadOnlyList<Piece> Pieces = [new("a", new(300, 200), 3, 6, true), new("b", new(500, 400), 3, 1, false)];
    private static readonly HandRules Rules = new(Pieces, new(1220, 2440), 10, 5, CutProcess.Free);
    private static readonly IReadOnlyList<HandSheet> Start = [new(3, [new("a", 10, 10)]), new(1, [new("b", 10, 10), new("a", 600, 600), new("a", 700, 1000), new("a", 10, 1000)])];

    [Fact]
    public void A_move_changes_one_piece_and_the_layout_before_stays_as_it_was()
    {
        HandDone done = Do(Start, new(HandVerb.Move, 1, 1, 650.5, 620));
        Assert.Equal(new HandSpot("a", 650.5, 620), done.Sheets[1].Spots[1]);
        Assert.Equal(new HandSpot("a", 600, 600), Start[1].Spots[1]);
        Assert.Equal(Start[0], done.Sheets[0]);
    }

    [Theory]
    [InlineData(518, 13, 515, 10)]
    [InlineData(4, 418, 10, 415)]
    [InlineData(600, 700, 600, 700)]
    public void Let_go_near_a_neighbour_or_an_edge_a_piece_lies_exactly_at_gap_and_margin(double x, double y, double wantedX, double wantedY)
    {
        IReadOnlyList<HandSheet> sheets = [new(1, [new("b", 10, 10), new("a", 600, 1200)])];
        HandSpot laid = Do(sheets, new(HandVerb.Move, 0, 1, x, y, ReachMm: 9)).Sheets[0].Spots[1];
        Assert.Equal((wantedX, wantedY), (laid.XMm, laid.YMm));
        Assert.Empty(LayoutConflicts.OnSheet(new(1, [sheets[0].Spots[0], laid]), 0, Rules));
    }

    [Fact]
    public void Four_turns_bring_a_piece_back_and_its_middle_stays()
    {
        HandDone once = Do(Start, new(HandVerb.Turn, 1, 1));
        Assert.Equal(new HandSpot("a", 650, 550, 90), once.Sheets[1].Spots[1]);
        HandDone four = once;
        for (int i = 0; i < 3; i++)
            four = Do(four.Sheets, new(HandVerb.Turn, 1, 1));
        Assert.Equal(Start[1].Spots[1], four.Sheets[1].Spots[1]);

        // What may not lie on its side goes half round.
        Assert.Equal(Start[1].Spots[0] with { Angle = 180 }, Do(Start, new(HandVerb.Turn, 1, 0)).Sheets[1].Spots[0]);
    }

    [Fact]
    public void Pulling_between_sheets_printed_unequally_often_loses_and_makes_no_copy()
    {
        // The sheet printed three times gives up one of its kind, which then stands alone.
        HandDone done = Do(Start, new(HandVerb.Pull, 0, 0, To: 1));
        Assert.Equal([2, 1, 1], done.Sheets.Select(s => s.Repeats));
        Assert.Empty(done.Sheets[1].Spots);
        Assert.Equal((2, 4), (done.Sheet, done.Spot));
        Assert.Equal([0, 0], HandSheets.Missing(done.Sheets, Rules));

        // The other way round the target is parted.
        HandDone back = Do(Start, new(HandVerb.Pull, 1, 1, To: 0));
        Assert.Equal([2, 1, 1], back.Sheets.Select(s => s.Repeats));
        Assert.Equal([1, 2, 3], back.Sheets.Select(s => s.Spots.Count));
        Assert.Equal([0, 0], HandSheets.Missing(back.Sheets, Rules));
    }

    [Fact]
    public void A_pulled_piece_finds_a_place_without_conflict()
    {
        IReadOnlyList<HandSheet> sheets = [new(1, [new("a", 10, 10)]), new(1, [new("b", 10, 10)])];
        HandDone done = Do(sheets, new(HandVerb.Pull, 0, 0, To: 1));
        Assert.Empty(LayoutConflicts.OnSheet(done.Sheets[1], 1, Rules));
    }

    [Fact]
    public void Taken_off_and_put_back_a_piece_lies_clear()
    {
        HandDone off = Do(Start, new(HandVerb.TakeOff, 1, 0));
        Assert.Equal([0, 1], HandSheets.Missing(off.Sheets, Rules));
        HandDone on = Do(off.Sheets, new(HandVerb.Put, 1, PieceId: "b"));
        Assert.Equal([0, 0], HandSheets.Missing(on.Sheets, Rules));
        Assert.Empty(LayoutConflicts.OnSheet(on.Sheets[1], 1, Rules));
    }

    [Fact]
    public void Locked_pieces_stay_when_a_sheet_is_cleared()
    {
        IReadOnlyList<HandSheet> locked = Do(Start, new(HandVerb.Lock, 1, 2)).Sheets;
        Assert.Equal([Start[1].Spots[2] with { Locked = true }], Do(locked, new(HandVerb.Clear, 1)).Sheets[1].Spots);
        Assert.All(Do(locked, new(HandVerb.LockSheet, 1)).Sheets[1].Spots, s => Assert.True(s.Locked));
        Assert.All(Do(locked, new(HandVerb.UnlockSheet, 1)).Sheets[1].Spots, s => Assert.False(s.Locked));
    }

    [Fact]
    public void Tidied_sheets_are_merged_and_empty_ones_gone()
    {
        IReadOnlyList<HandSheet> split = Do(Do(Start, new(HandVerb.Split, 0)).Sheets, new(HandVerb.AddSheet, 0)).Sheets;
        Assert.Equal([2, 1, 1, 1], split.Select(s => s.Repeats));
        Assert.Equal([3, 1], HandSheets.Tidy(split).Select(s => s.Repeats));
    }

    [Fact]
    public void Clearances_reach_to_the_nearest_neighbour_or_the_edge()
    {
        HandSheet sheet = new(1, [new("a", 100, 100), new("a", 410, 150), new("b", 100, 340)]);
        Assert.Equal(
            [new(PieceSide.Left, 100, null), new(PieceSide.Right, 10, 1), new(PieceSide.Below, 100, null), new(PieceSide.Above, 40, 2)],
            Clearances.Of(sheet, 0, Rules));
    }

    private static HandDone Do(IReadOnlyList<HandSheet> sheets, HandEdit edit) => LayoutEdit.Apply(sheets, edit, Rules).Value;
}
