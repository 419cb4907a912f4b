using Laydown.Core.Tests.Plan;
using Laydown.Core.Tests.Press;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.StockRoom;

/// <summary>The room stands as the log says: what a run used is taken once, whatever was done before and in whatever order.</summary>
public sealed class RunUseLawTests
{
    private static readonly DateTimeOffset Now = new(2026, 12, 1, 8, 0, 0, TimeSpan.Zero);
    private static readonly Stock Board = Presses.Board();
    private static readonly Run Four = SampleRun(4, [new(0, 0, 1220, 600)]);

    [Fact]
    public void A_run_that_is_done_takes_good_and_spoiled_sheets_gives_the_rest_free_and_brings_its_rests_in()
    {
        Room room = new(Lot("L-0001", 10) with { Reserved = [new(Four.Id, 8), new("R-9", 1)] });
        IReadOnlyList<StockMove> moves = room.Book(Four, 6, 17);
        Assert.Equal([(StockMoveKind.Consume, 6m), (StockMoveKind.Release, 2m), (StockMoveKind.Offcut, 4m)], moves.Select(m => (m.Kind, m.Quantity)));
        Assert.All(moves, m => Assert.Equal((17L, "why 17", "R-1"), (m.LogEntry, m.Why, m.RunId)));
        Assert.Equal((4m, 3m, 0m), (room["L-0001"].OnHand, room["L-0001"].Free, room["L-0001"].ReservedFor(Four.Id)));
        Assert.Empty(room.Book(Four, 6, 17));
    }

    [Fact]
    public void Of_what_was_taken_by_hand_only_what_was_used_beyond_it_is_taken_and_what_was_not_used_is_brought_back()
    {
        Room room = new(Lot("L-0001", 10));
        room.Do([.. StockPicks.Take(Four, [Board], room.Lots, "rests", new(2026, 12, 1), Now, "Ann").Value]);
        Assert.Equal([(StockMoveKind.Consume, 2m)], room.Book(Four, 6, 3).Select(m => (m.Kind, m.Quantity)));
        Assert.Equal([(StockMoveKind.Return, 3m)], room.Book(Four, 3, 5).Select(m => (m.Kind, m.Quantity)));
        Assert.Equal(7, room["L-0001"].OnHand);

        // The end is struck: what was taken by hand stays taken, its rests stay.
        Assert.Equal([(StockMoveKind.Consume, 1m)], room.Book(Four, null, 6).Select(m => (m.Kind, m.Quantity)));
        Assert.Equal((6m, true), (room["L-0001"].OnHand, RunUse.IsTaken(room.Moves)));
        Assert.Equal(4, Assert.Single(room.Lots, l => l.BornOf == Four.Id).OnHand);
    }

    [Fact]
    public void An_end_that_is_struck_brings_all_back_that_the_log_had_taken_and_takes_its_rests_out()
    {
        Room room = new(Lot("L-0001", 3), Lot("L-0002", 10));
        Assert.Equal([("L-0001", 3m), ("L-0002", 2m)], room.Book(Four, 5, 3).Where(m => m.Kind == StockMoveKind.Consume).Select(m => (m.LotId, m.Quantity)));
        room.Book(Four, null, 4);
        Assert.Equal([3m, 10m, 0m], room.Lots.Select(l => l.OnHand));
        Assert.False(RunUse.IsTaken(room.Moves));
        Assert.Empty(room.Book(Four, null, 4));
        room.Book(Four, 4, 5);
        Assert.Equal([0m, 9m, 0m, 4m], room.Lots.Select(l => l.OnHand));
    }

    [Fact]
    public void Where_the_room_holds_less_what_is_there_is_taken_what_others_keep_back_is_not_and_the_lack_is_told()
    {
        Room room = new(Lot("L-0001", 5) with { Reserved = [new("R-9", 2)] });
        room.Book(Four, 5, 3);
        Assert.Equal((2m, 0m), (room["L-0001"].OnHand, room["L-0001"].Free));
        RunStockLine line = Assert.Single(RunStockLines.Of(Four, [Board], room.Lots, room.Moves, 5));
        Assert.Equal((4m, 5m, 3m, 2m), (line.Needed, line.Used, line.Taken, line.NotTaken));

        // No lot of it: the shop does not keep it by lots, nothing is made up, no rest comes in.
        Assert.Empty(new Room().Book(Four, 5, 3));
    }

    [Fact]
    public void Metres_of_a_roll_go_by_sheets_and_whole_centimetres()
    {
        Stock roll = Board with { Id = "roll", Kind = StockKind.Roll, WidthMm = 1600, LengthMm = 50_000 };
        Run run = SampleRun(3, []) with { StockId = "roll" };
        run = run with { Sheets = [run.Sheets[0] with { Sheet = new(1600, 1333) }] };
        Assert.Equal(4, StockPicks.Needed(run, roll));
        Assert.Equal([0m, 1.34m, 4m, 5.34m], new[] { 0, 1, 3, 4 }.Select(made => RunUse.Used(run, [roll], made)["roll"]));
    }

    /// <summary>Any share of any number of sheets, three stocks: together as many as were made, each within one of its share.</summary>
    [Fact]
    public void Sheets_of_several_stocks_add_up_to_what_was_made()
    {
        Stock[] stocks = [Board with { Id = "a" }, Board with { Id = "b", WidthMm = 400 }, Board with { Id = "c", WidthMm = 300 }];
        Run run = SampleRun(1, []);
        run = run with { StockId = "a", BesideStockIds = ["b", "c"], Sheets = [run.Sheets[0] with { Repeats = 5 }, run.Sheets[0] with { Repeats = 7, StockId = "b" }, run.Sheets[0] with { Repeats = 1, StockId = "c" }] };
        for (int made = 0; made <= 40; made++)
        {
            IReadOnlyDictionary<string, decimal> used = RunUse.Used(run, stocks, made);
            Assert.Equal(made, used.Values.Sum());
            foreach ((string id, int planned) in new[] { ("a", 5), ("b", 7), ("c", 1) })
                Assert.InRange(used[id] - (made * planned / 13m), -1, 1);
        }

        Assert.Equal([("a", 5m), ("b", 7m), ("c", 1m)], RunUse.Used(run, stocks, 13).Select(u => (u.Key, u.Value)));
    }

    /// <summary>Seeded orders of ends, corrections, strikes and taking by hand: at every step the room is short of exactly what the log, or before it the hand, says.</summary>
    [Theory, InlineData(1), InlineData(2)]
    public void Nothing_is_taken_twice_whatever_the_order(int seed)
    {
        Random chance = new(seed);
        for (int trial = 0; trial < 100; trial++)
        {
            Room room = new(Lot("L-0001", chance.Next(1, 30)), Lot("L-0002", 40));
            decimal before = room.OfBoards;
            bool byHand = false;
            for (int step = 1; step < 12; step++)
            {
                int? made = chance.Next(4) == 0 ? null : chance.Next(1, 12);
                if (!RunUse.IsTaken(room.Moves) && chance.Next(3) == 0)
                {
                    room.Do([.. StockPicks.Take(Four, [Board], room.Lots, "rests", new(2026, 12, 1), Now, "Ann").Value]);
                    byHand = true;
                }

                room.Book(Four, made, step);
                Assert.Equal(made ?? (byHand ? 4 : 0), before - room.OfBoards);
                Assert.Equal(made is null && !byHand ? 0 : 4, room.Lots.Where(l => l.BornOf == Four.Id).Sum(l => l.OnHand));
                Assert.All(room.Lots, l => Assert.True(l.OnHand >= 0 && l.Reserved.Count == 0));
            }
        }
    }

    private static StockLot Lot(string id, decimal count) => new(id, "board", StockKind.Board, 1220, 2440, "rack 1", count, [], new(2026, 11, 1));

    private static Run SampleRun(int repeats, IReadOnlyList<RectMm> rests)
    {
        RunRequest request = Works.Request();
        return RunPlanner.Plan(request).Value with { Sheets = [request.Sheets[0] with { Sheet = Board.Size, Repeats = repeats, Offcuts = rests }] };
    }

    /// <summary>A room whose moves are done as they come.</summary>
    private sealed class Room(params StockLot[] lots)
    {
        private readonly List<StockLot> there = [.. lots];

        public List<StockMove> Moves { get; } = [];

        public IReadOnlyList<StockLot> Lots => there;

        public decimal OfBoards => there.Where(l => l.BornOf is null).Sum(l => l.OnHand);

        public StockLot this[string id] => there.Single(l => l.Id == id);

        public IReadOnlyList<StockMove> Book(Run run, long? made, long entry)
        {
            IReadOnlyList<StockMove> moves = RunUse.Moves(run, [Board], there, Moves, made, "rests", new(StockMoveKind.Count, "", 0, Now, "Ann", Why: Invariant($"why {entry}"), LogEntry: entry));
            Do(moves);
            return moves;
        }

        public void Do(IReadOnlyList<StockMove> moves)
        {
            foreach (StockLot lot in StockMoves.Do(there, moves, [Board]).Value.Lots)
            {
                there.RemoveAll(l => l.Id == lot.Id);
                there.Add(lot);
            }

            there.Sort((one, other) => string.CompareOrdinal(one.Id, other.Id));
            Moves.AddRange(moves);
        }
    }
}
