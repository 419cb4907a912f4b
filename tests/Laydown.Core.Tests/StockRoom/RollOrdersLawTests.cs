using Laydown.Core.Tests.Plan;
using Laydown.Core.Tests.Press;
using Laydown.Layout.Sheets;
using Laydown.Plan.Runs;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.StockRoom;

/// <summary>Rolls are ordered whole, as many as let every waiting run be kept back and not one more; a roll that is too short counts for nothing.</summary>
public sealed class RollOrdersLawTests
{
    private const decimal WholeM = 50;
    private static readonly DateTimeOffset Now = new(2026, 12, 1, 8, 0, 0, TimeSpan.Zero);
    private static readonly Stock Roll = Presses.Board() with { Id = "roll", Kind = StockKind.Roll, WidthMm = 1600, LengthMm = 50_000, ReorderAt = null, OrderTo = null };

    [Fact]
    public void Short_rolls_that_do_not_hold_the_piece_are_not_counted_and_it_is_said_which()
    {
        StockLot[] room = [Lot("L-1", 5), Lot("L-2", 6), Lot("L-3", 7)];
        Run run = Printed("R-1", [9000]);
        Assert.False(StockPicks.Reserve(run, [Roll], room, Now, "Ann").IsTaken);
        StockLine line = Line(Roll, room, run);
        Assert.Equal((18m, 9m, 50m, 1), (line.Free, line.Wanted, line.ToOrder, line.Rolls));
        Assert.Equal("Not counted: L-1 with 5 m, L-2 with 6 m, L-3 with 7 m, too short for the 9 m that R-1 takes in one length.", line.OrderWords);
        Assert.EndsWith("no roll of roll with 9 m in one length left for run R-1; most is 7 m. Order more before release.", Assert.Single(StockSupply.RefusalsNow(run, [Roll], room, false)), StringComparison.Ordinal);

        // Cut into sections that the rolls hold, nothing is to be ordered and nothing speaks against it.
        Run cut = Printed("R-1", [9000], 4500);
        Assert.Equal((0m, 0, null), (Line(Roll, room, cut).ToOrder, Line(Roll, room, cut).Rolls, Line(Roll, room, cut).OrderWords));
        Assert.Empty(StockSupply.RefusalsNow(cut, [Roll], room, false));
        Assert.Empty(StockSupply.RefusalsNow(run, [Roll], [Lot("L-4", 12)], false));
    }

    [Fact]
    public void Two_that_lie_side_by_side_want_two_rolls_though_one_is_long_enough_for_both()
    {
        Run pair = Printed("R-1", [9000, 9000]);
        pair = pair with { Belt = pair.Belt with { Lanes = [new(1, 0, 1600, 1), new(2, 1650, 1600, 1)] } };
        Assert.Equal(1, Line(Roll, [Lot("L-1", 30)], pair).Rolls);
        Assert.Equal(0, Line(Roll, [Lot("L-1", 30), Lot("L-2", 9)], pair).Rolls);
    }

    [Fact]
    public void Reorder_points_are_filled_up_by_whole_rolls_that_count()
    {
        Stock watched = Roll with { ReorderAt = 60, OrderTo = 120 };
        Assert.Equal((0m, 0), Ordered(watched, [Lot("L-1", 50), Lot("L-2", 11)]));
        Assert.Equal((100m, 2), Ordered(watched, [Lot("L-1", 50), Lot("L-2", 10)]));

        // One roll for the run leaves 41 m of it; rests too short for it do not count towards the 120 m.
        Assert.Equal((150m, 3), Ordered(watched, [Lot("L-1", 8), Lot("L-2", 8), Lot("L-3", 8)], Printed("R-1", [9000])));
        Assert.Equal((0m, 0), Ordered(Roll, [], []));

        (decimal, int?) Ordered(Stock stock, StockLot[] room, params Run[] runs) => (Line(stock, room, runs).ToOrder, Line(stock, room, runs).Rolls);
    }

    [Fact]
    public void What_was_counted_too_low_is_ordered_and_a_run_that_no_roll_holds_is_named()
    {
        StockLot low = Lot("L-1", 2) with { Reserved = [new("R-9", 9)] };
        Assert.Equal(1, Line(Roll, [low]).Rolls);
        Assert.Equal(0, Line(Roll, [low, Lot("L-2", 7)]).Rolls);
        StockLine never = Line(Roll, [Lot("L-1", 50), Lot("L-2", 50)], Printed("R-1", [60_000]), Printed("R-2", [9000]));
        Assert.Equal((0, "R-1 takes 60 m in one length; a roll has 50 m."), (never.Rolls, never.OrderWords));
    }

    [Fact]
    public void A_stock_without_a_lot_counts_as_whole_rolls_and_one_rest()
    {
        Run[] runs = [Printed("R-1", [40_000]), Printed("R-2", [40_000]), Printed("R-3", [40_000])];
        Assert.Equal(0, Line(Roll with { OnHand = 150 }, [], runs).Rolls);
        Assert.Equal(1, Line(Roll with { OnHand = 130 }, [], runs).Rolls);
    }

    /// <summary>Seeded rooms and runs: with what is ordered all runs are kept back in turn, with one roll less they are not.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void With_what_is_ordered_every_run_is_kept_back_and_with_one_roll_less_one_is_not(int seed)
    {
        Random chance = new(seed);
        int ordered = 0, words = 0;
        for (int i = 0; i < 300; i++)
        {
            StockLot[] room = [.. Enumerable.Range(1, chance.Next(1, 5)).Select(n => Lot(Invariant($"L-{n:0000}"), chance.Next(1, 500) / 10m))];
            Run[] runs = [.. Enumerable.Range(1, chance.Next(1, 5)).Select(n => Drawn(Invariant($"R-{n}"), chance))];
            StockLine line = Line(Roll, room, runs);
            Assert.Equal(line.Rolls * WholeM, line.ToOrder);
            Assert.True(AllKept(room, runs, line.Rolls!.Value), Invariant($"draw {i}: {line}"));
            Assert.False(line.Rolls > 0 && AllKept(room, runs, line.Rolls.Value - 1), Invariant($"draw {i}: {line}"));
            ordered += line.Rolls > 0 ? 1 : 0;
            words += line.OrderWords is null ? 0 : 1;
        }

        Assert.InRange(ordered, 50, 250);
        Assert.InRange(words, 20, 250);
    }

    private static bool AllKept(IReadOnlyList<StockLot> room, Run[] runs, int rolls)
    {
        List<StockLot> lots = [.. room, .. Enumerable.Range(1, rolls).Select(n => Lot(Invariant($"L-1{n:000}"), WholeM))];
        foreach (Run run in runs)
        {
            if (!StockPicks.Reserve(run, [Roll], lots, Now, "Ann").IsTaken)
                return false;
            StockChange change = StockMoves.Do(lots, StockPicks.Reserve(run, [Roll], lots, Now, "Ann").Value, [Roll]).Value;
            lots = [.. lots.Select(l => change.Lots.FirstOrDefault(c => c.Id == l.Id) ?? l)];
        }

        return true;
    }

    private static Run Drawn(string id, Random chance)
    {
        int length = chance.Next(10, 480) * 100, cuts = chance.Next(0, 4);
        return Printed(id, [length], [.. Enumerable.Range(1, cuts).Select(c => (double)length * c / (cuts + 1))]);
    }

    private static Run Printed(string id, IReadOnlyList<double> lengthsMm, params double[] cuts)
    {
        RunRequest request = Works.Request();
        SheetLayout first = request.Sheets[0];
        Run run = RunPlanner.Plan(request).Value;
        return run with
        {
            Id = id,
            StockId = Roll.Id,
            Sheets = [.. lengthsMm.Select(l => first with { Sheet = new(1600, l), Repeats = 1, Offcuts = [], CutsAcrossMm = cuts })],
            Belt = run.Belt with { Lanes = [new(1, 0, 1600, 1)] },
            SetUp = run.SetUp with { Refusals = [] },
        };
    }

    private static StockLine Line(Stock stock, IReadOnlyList<StockLot> room, params Run[] runs) => Assert.Single(StockLines.Of([stock], room, runs));

    private static StockLot Lot(string id, decimal metres) => new(id, "roll", StockKind.Roll, 1600, 50_000, "rack 1", metres, [], new(2026, 11, 1));
}
