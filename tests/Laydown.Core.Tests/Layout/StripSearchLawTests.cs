using Laydown.Instances.Rectangles;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Strips;

namespace Laydown.Core.Tests.Layout;

public sealed class StripSearchLawTests
{
    public static IEnumerable<TheoryDataRow<int>> Seeds() => Enumerable.Range(1, 40).Select(s => new TheoryDataRow<int>(s));

    [Theory, MemberData(nameof(Seeds))]
    public void Rows_of_bits_fill_as_looking_at_every_piece_does(int seed)
    {
        Random chance = new(seed);
        int width = 10 + chance.Next(40), height = 20 + chance.Next(30);
        IReadOnlyList<RectPiece> pieces = [.. Enumerable.Range(0, 1 + chance.Next(90)).Select(i => new RectPiece(Invariant($"{i}"), 1 + chance.Next(width / 2), 1 + chance.Next(12), 1, false))];
        StripPieces all = new(pieces, width);
        StripRows rows = new(all);
        StripFill fill = new(all, new(width, pieces), rows.Words);

        // Some changes of places, so that rows are kept and not only made anew.
        int[] order = [.. Enumerable.Range(0, all.Count)];
        for (int i = 0; i < 50; i++)
        {
            (int one, int other) = (chance.Next(all.Count), chance.Next(all.Count));
            rows.Swap(one, other);
            (order[one], order[other]) = (order[other], order[one]);
        }

        long waste = fill.Run(rows, height, long.MaxValue);
        List<(int Piece, int X, int Y)> plain = PlainStripFill.Run([.. order.Select(c => pieces[c])], width, height);
        Assert.Equal(plain.Select(p => (order[p.Piece], p.X, p.Y)), Enumerable.Range(0, fill.Placed).Select(i => (fill.Ways[i], fill.Xs[i], fill.Ys[i])));
        if (fill.Placed < all.Count)
            Assert.Equal(((long)width * height) - plain.Sum(p => pieces[order[p.Piece]].Area), waste);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    [InlineData(3, true)]
    public void Strips_are_right_get_lower_each_time_and_are_not_under_the_bound(int seed, bool mayTurn)
    {
        RectInstance instance = Draw(seed, 60);
        List<StripAnswer> told = [];
        StripAnswer answer = StripSearch.Solve(Problem(instance, mayTurn), new(seed, 2000, 2), told.Add, default);

        Assert.All(told, a => Assert.Empty(StripChecks.Faults(instance, a, mayTurn)));
        Assert.All(told.Zip(told.Skip(1)), p => Assert.True(p.Second.Height < p.First.Height));
        Assert.Same(told[^1].GetType(), answer.GetType());
        Assert.Equal(told[^1].Height, answer.Height);
        Assert.InRange(answer.Height, answer.Least, int.MaxValue);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_same_seed_and_count_of_fillings_give_the_same_strip_with_any_timing_of_workers(int workers)
    {
        RectInstance instance = Draw(7, 80);
        StripAnswer Once() => StripSearch.Solve(Problem(instance, true), new(5, 3000, workers), null, default);
        Assert.Equal(Once().Spots, Once().Spots);
    }

    [Fact]
    public void A_search_stopped_before_it_began_gives_its_first_strip()
    {
        RectInstance instance = Draw(3, 50);
        StripAnswer stopped = StripSearch.Solve(Problem(instance, false), new(), null, new CancellationToken(canceled: true));
        Assert.Empty(StripChecks.Faults(instance, stopped, false));
    }

    [Fact]
    public void Sizes_that_share_ranks_for_want_of_room_still_give_a_right_strip()
    {
        RectInstance instance = Draw(11, 20_000, widest: 3000);
        StripAnswer answer = StripSearch.Solve(Problem(instance, true), new(1, 0), null, default);
        Assert.Empty(StripChecks.Faults(instance, answer, true));
        Assert.True(answer.Height < 1.1 * answer.Least);
    }

    // Beside 6 of 10 nothing of 5 can lie: 8 high, then 2 of width 5 beside each other.
    [Fact]
    public void The_bound_sees_that_wide_pieces_leave_no_room_beside_them() =>
        Assert.Equal(11, StripBounds.Least(new(10, [new("wide", 6, 4, 2, false), new("half", 5, 3, 2, false)])));

    private static StripProblem Problem(RectInstance instance, bool mayTurn) => new(
        instance.Bins[0].Width, [.. instance.Items.Select((p, i) => new RectPiece(Invariant($"{i}"), p.Width, p.Height, p.Copies, mayTurn))]);

    private static RectInstance Draw(int seed, int count, int widest = 300)
    {
        Random chance = new(seed);
        return new("drawn", [new(1000, 1, 1, 1)], [.. Enumerable.Range(0, count / 2).Select(_ => new RectItem(20 + chance.Next(Math.Min(900, widest)), 20 + chance.Next(widest), 1 + chance.Next(3), -1))], [], new Dictionary<string, string>());
    }
}
