using Laydown.Core.Tests.Plan;
using Laydown.Core.Tests.Press;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.StockRoom;

public sealed class StockMovesLawTests
{
    private static readonly DateTimeOffset Now = new(2026, 12, 1, 8, 0, 0, TimeSpan.Zero);
    private static readonly Stock Board = Presses.Board();

    [Fact]
    public void What_comes_in_is_kept_back_taken_and_counted()
    {
        IReadOnlyList<StockLot> room = Done([], In("L-0001", 10));
        room = Done(room, Of(StockMoveKind.Reserve, "L-0001", 4, "R-1"), Of(StockMoveKind.Reserve, "L-0001", 3, "R-2"));
        Assert.Equal((10m, 3m), (room[0].OnHand, room[0].Free));
        room = Done(room, Of(StockMoveKind.Consume, "L-0001", 5, "R-1"));
        Assert.Equal((5m, 2m, 0m, 3m), (room[0].OnHand, room[0].Free, room[0].ReservedFor("R-1"), room[0].ReservedFor("R-2")));
        room = Done(room, Of(StockMoveKind.Count, "L-0001", 2), Of(StockMoveKind.Place, "L-0001", 0) with { Place = "rack 9" });
        Assert.Equal((2m, 0m, 1m, "rack 9"), (room[0].OnHand, room[0].Free, room[0].Short, room[0].Place));
    }

    /// <summary>Seeded moves, many of them impossible: what is refused changes nothing, what is done adds up, nothing falls under nothing.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Nothing_is_lost_and_nothing_falls_under_nothing(int seed)
    {
        Random chance = new(seed);
        IReadOnlyList<StockLot> room = Done([], In("L-1", 20), In("L-2", 5));
        decimal expected = 25;
        int refused = 0;
        for (int i = 0; i < 2000; i++)
        {
            StockMove[] moves = [.. Enumerable.Range(0, 1 + chance.Next(3)).Select(_ => Of(
                (StockMoveKind)chance.Next(4), chance.Next(2) == 0 ? "L-1" : "L-2", chance.Next(1, 9), chance.Next(2) == 0 ? "R-1" : "R-2"))];
            Reading<StockChange> change = StockMoves.Do(room, moves, [Board]);
            if (!change.IsTaken)
            {
                refused++;
                continue;
            }

            expected += moves.Sum(m => m.Kind switch { StockMoveKind.Receive => m.Quantity, StockMoveKind.Consume => -m.Quantity, _ => 0 });
            room = Together(room, change.Value);
            Assert.Equal(expected, room.Sum(l => l.OnHand));
            Assert.All(room, l => Assert.True(l.OnHand >= 0 && l.Reserved.Sum(r => r.Quantity) <= l.OnHand && l.Reserved.All(r => r.Quantity > 0)));
        }

        Assert.InRange(refused, 100, 1900);
    }

    [Fact]
    public void A_run_takes_the_oldest_lots_and_leaves_its_rests_as_lots_of_their_own()
    {
        Run run = SampleRun(repeats: 4, [new(0, 0, 1220, 600), new(0, 700, 500, 300)], Board.Size);
        IReadOnlyList<StockLot> room = Done([], In("L-0001", 3, day: 5), In("L-0002", 9, day: 2), In("L-0007", 9, day: 9));
        room = Done(room, [.. StockPicks.Reserve(run, [Board], room, Now, "Ann").Value]);
        Assert.Equal([("L-0002", 4m)], room.Where(l => l.Reserved.Count > 0).Select(l => (l.Id, l.ReservedFor(run.Id))));
        Assert.Empty(StockPicks.Reserve(run, [Board], room, Now, "Ann").Value);

        room = Done(room, [.. StockPicks.Take(run, [Board], room, "rest rack", new(2026, 12, 1), Now, "Ann").Value]);
        Assert.Equal(5, room.Single(l => l.Id == "L-0002").OnHand);
        Assert.Equal([("L-0008", 600.0, 1220.0, 4m), ("L-0009", 300, 500, 4)], room.Where(l => l.BornOf == run.Id).Select(l => (l.Id, l.WidthMm, l.LengthMm, l.OnHand)));
    }

    [Fact]
    public void A_run_on_two_sizes_of_blanks_keeps_back_and_takes_of_each_what_its_sheets_need()
    {
        Stock large = Board with { Id = "large", Kind = StockKind.Blank, WidthMm = 480, LengthMm = 640 }, small = large with { Id = "small", WidthMm = 300, LengthMm = 400 };
        Run run = SampleRun(40, [], large.Size);
        run = run with { StockId = "large", BesideStockIds = ["small"], Sheets = [run.Sheets[0] with { StockId = "large" }, run.Sheets[0] with { StockId = "small", Sheet = small.Size, Repeats = 24 }] };
        Assert.Equal((40m, 24m), (StockPicks.Needed(run, large), StockPicks.Needed(run, small)));
        StockLot Lot(string id, Stock of, decimal count) => new(id, of.Id, of.Kind, of.WidthMm, of.LengthMm, "rack 1", count, [], new(2026, 11, 1));
        IReadOnlyList<StockLot> room = [Lot("L-0001", large, 100), Lot("L-0002", small, 30)];
        Assert.Equal([40m, 24m], StockLines.Of([large, small], room, [run]).Select(l => l.Wanted));

        // Less is needed than was kept back: the rest is given free when the run is taken.
        room = Together(room, StockMoves.Do(room, [.. StockPicks.Reserve(run, [large, small], room, Now, "Ann").Value, Of(StockMoveKind.Reserve, "L-0002", 2, run.Id)], [large, small]).Value);
        Assert.Equal([40m, 26m], room.Select(l => l.ReservedFor(run.Id)));
        room = Together(room, StockMoves.Do(room, StockPicks.Take(run, [large, small], room, "rests", new(2026, 12, 1), Now, "Ann").Value, [large, small]).Value);
        Assert.Equal([(60m, 60m), (6m, 6m)], room.Select(l => (l.OnHand, l.Free)));

        Reading<IReadOnlyList<StockMove>> lacking = StockPicks.Reserve(run with { Id = "R-2" }, [large, small], [room[1]], Now, "Ann");
        Assert.Equal(["no lot of large in the room for run R-2", "18 of small too few free for run R-2"], lacking.Faults.Select(f => f.Found));
    }

    [Fact]
    public void What_a_run_lacks_is_asked_of_the_room_as_it_stands_not_of_the_day_it_was_planned()
    {
        Run run = SampleRun(4, [], Board.Size);
        run = run with { SetUp = run.SetUp with { Refusals = ["An edge stands too high.", "Board: 4 boards are needed, 3 are on hand. Order more before release."] } };
        IReadOnlyList<StockLot> room = Done([], In("L-0001", 4));

        // Goods came: the old sentence goes, what else speaks against it stays.
        Assert.Equal(["An edge stands too high."], StockSupply.RefusalsNow(run, [Board], room, false));

        // Kept back for itself it is there; kept back for another run it is not.
        IReadOnlyList<StockLot> own = Done(room, Of(StockMoveKind.Reserve, "L-0001", 4, run.Id)), other = Done(room, Of(StockMoveKind.Reserve, "L-0001", 3, "R-9"));
        Assert.Single(StockSupply.RefusalsNow(run, [Board], own, false));
        Assert.EndsWith("4 boards are needed, 1 is on hand. Order more before release.", StockSupply.RefusalsNow(run, [Board], other, false)[1], StringComparison.Ordinal);
        Assert.Single(StockSupply.RefusalsNow(run, [Board], Done(own, Of(StockMoveKind.Consume, "L-0001", 4, run.Id)), true));
        Assert.Equal(2, StockSupply.RefusalsNow(run, [Board with { OnHand = 3 }], [], false).Count);
    }

    [Fact]
    public void A_roll_is_taken_whole_or_in_sections_and_no_piece_is_parted_between_two_rolls()
    {
        Stock roll = Board with { Id = "roll", Kind = StockKind.Roll, WidthMm = 1600, LengthMm = 50_000 };
        StockLot Lot(string id, decimal metres) => new(id, "roll", StockKind.Roll, 1600, 50_000, "rack 1", metres, [], new(2026, 11, 1));
        Run run = SampleRun(1, [], new(1600, 9000));
        Run cut = run with { Sheets = [run.Sheets[0] with { CutsAcrossMm = [4000, 6500] }] };
        (string, decimal)[] Picked(Run of, params StockLot[] room) => [.. StockPicks.Reserve(of, [roll], room, Now, "Ann").Value.Select(m => (m.LotId, m.Quantity))];

        // The oldest roll that holds all of it, though an older one holds a part.
        Assert.Equal([("L-2", 9m)], Picked(run with { StockId = "roll" }, Lot("L-1", 5), Lot("L-2", 12)));

        // Sections of 4, 2.5 and 2.5 m: 4 from the first, what is left of it is too short for another.
        Assert.Equal([("L-1", 4m), ("L-2", 5m)], Picked(cut with { StockId = "roll" }, Lot("L-1", 5), Lot("L-2", 6)));
        Reading<IReadOnlyList<StockMove>> parted = StockPicks.Reserve(run with { StockId = "roll" }, [roll], [Lot("L-1", 5), Lot("L-2", 6)], Now, "Ann");
        Assert.Equal("no roll of roll with 9 m in one length left for run R-1; most is 6 m", Assert.Single(parted.Faults).Found);

        // Two that lie side by side are two rolls, though one would be long enough for both.
        Run pair = run with { StockId = "roll", Sheets = [run.Sheets[0], run.Sheets[0]], Belt = run.Belt with { Lanes = [new(1, 0, 1600, 1), new(2, 1650, 1600, 1)] } };
        Assert.Equal([("L-1", 9m), ("L-2", 9m)], Picked(pair, Lot("L-1", 30), Lot("L-2", 10)));
        Assert.Equal("1 of the 2 rolls of roll that lie side by side in run R-1", Assert.Single(StockPicks.Reserve(pair, [roll], [Lot("L-1", 30)], Now, "Ann").Faults).Found);
        Assert.Equal("1 of roll too few free for run R-1", Assert.Single(StockPicks.Reserve(run with { StockId = "roll" }, [roll], [Lot("L-1", 8)], Now, "Ann").Faults).Found);
    }

    [Fact]
    public void Taking_without_keeping_back_first_takes_what_is_free()
    {
        Run run = SampleRun(4, [], Board.Size);
        IReadOnlyList<StockLot> room = Done([], In("L-0001", 6));
        room = Done(room, [.. StockPicks.Take(run, [Board], room, "rests", new(2026, 12, 1), Now, "Ann").Value]);
        Assert.Equal((2m, 2m), (room[0].OnHand, room[0].Free));
        Assert.Equal("2 of board too few free for run R-1", Assert.Single(StockPicks.Take(run, [Board], room, "rests", new(2026, 12, 1), Now, "Ann").Faults).Found);
    }

    [Fact]
    public void A_rest_of_a_board_with_grain_keeps_its_way_round_though_the_sheet_was_drawn_turned()
    {
        Stock fluted = Board with { Grain = GrainDirection.AlongWidth };
        Run turned = SampleRun(1, [new(0, 0, 700, 300)], fluted.Size.Turned());
        Assert.Equal([(300.0, 700.0, 1)], StockPicks.Rests(turned, fluted));
        Run upright = SampleRun(1, [new(0, 0, 700, 300)], fluted.Size);
        Assert.Equal([(700.0, 300.0, 1)], StockPicks.Rests(upright, fluted));
    }

    [Fact]
    public void Planning_sees_what_is_free_and_offcuts_as_other_sizes_at_half_their_share()
    {
        IReadOnlyList<StockLot> room = Done([], In("L-0001", 10), Rest("L-0002", 610, 1220, 2), Rest("L-0003", 610, 1220, 1));
        room = Done(room, Of(StockMoveKind.Reserve, "L-0001", 4, "R-1"), Of(StockMoveKind.Reserve, "L-0003", 1, "R-1"));
        IReadOnlyList<Stock> shelf = StockShelf.Of([Board, Board with { Id = "other" }], room);
        Assert.Equal([("board", 6), ("other", 100), ("board-610-1220", 2)], shelf.Select(s => (s.Id, s.OnHand)));
        Assert.Equal("board", shelf[2].OtherSizeOf);

        // A quarter of the board at 20.00, half of that.
        Assert.Equal(new Money(250), shelf[2].Price);
        Assert.Same(shelf[1], StockShelf.Of(shelf, [])[1]);
    }

    [Fact]
    public void What_runs_lack_and_what_falls_to_the_reorder_point_is_ordered()
    {
        Run run = SampleRun(7, [], Board.Size);
        IReadOnlyList<StockLot> room = Done([], In("L-0001", 10));
        StockLine Line(Stock stock, params Run[] runs) => StockLines.Of([stock], room, runs)[0];
        Assert.Equal((10m, 0m, 0m), (Line(Board).Free, Line(Board).Wanted, Line(Board).ToOrder));
        Assert.Equal((7m, 0m), (Line(Board, run).Wanted, Line(Board, run).ToOrder));
        Assert.Equal((14m, 4m), (Line(Board, run, run).Wanted, Line(Board, run, run).ToOrder));
        Assert.Equal(9, Line(Board with { ReorderAt = 3, OrderTo = 12 }, run).ToOrder);
        Assert.Equal(0, Line(Board with { ReorderAt = 2, OrderTo = 12 }, run).ToOrder);
    }

    internal static StockMove Of(StockMoveKind kind, string lot, decimal quantity, string? run = null) => new(kind, lot, quantity, Now, "Ann", run);

    internal static StockMove In(string lot, decimal quantity, int day = 1) =>
        Of(StockMoveKind.Receive, lot, quantity) with { Lot = new(lot, "board", StockKind.Board, 1220, 2440, "rack 1", 0, [], new(2026, 11, day)) };

    private static StockMove Rest(string lot, double width, double length, decimal quantity) =>
        Of(StockMoveKind.Offcut, lot, quantity, "R-0") with { Lot = new(lot, "board", StockKind.Board, width, length, "rest rack", 0, [], new(2026, 11, 1), "R-0") };

    private static Run SampleRun(int repeats, IReadOnlyList<RectMm> rests, SizeMm sheet)
    {
        RunRequest request = Works.Request();
        SheetLayout first = request.Sheets[0];
        return RunPlanner.Plan(request).Value with { Sheets = [first with { Sheet = sheet, Repeats = repeats, Offcuts = rests }] };
    }

    private static IReadOnlyList<StockLot> Done(IReadOnlyList<StockLot> room, params StockMove[] moves) => Together(room, StockMoves.Do(room, moves, [Board]).Value);

    private static IReadOnlyList<StockLot> Together(IReadOnlyList<StockLot> room, StockChange change) =>
        [.. room.Where(l => change.Lots.All(c => c.Id != l.Id)).Concat(change.Lots).OrderBy(l => l.Id, StringComparer.Ordinal)];
}
