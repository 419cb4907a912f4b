using Laydown.Layout.FreePacking;

namespace Laydown.Core.Tests.Layout.FreePacking;

public sealed class FreeBoundsLawTests
{
    public static IEnumerable<TheoryDataRow<int>> Lengths() => new[] { 7, 10, 30, 100, 3_050_000 }.Select(l => new TheoryDataRow<int>(l));

    // Chance cuts a length into parts; their values are never over 1. Tolerance: a few hundred roundings of doubles.
    [Theory, MemberData(nameof(Lengths))]
    public void Values_of_lengths_that_fit_side_by_side_are_never_over_one(int length)
    {
        Random chance = new(length);
        for (int n = 0; n < 60; n++)
        {
            List<int> parts = [];
            for (int left = length; left > 0; left -= parts[^1])
                parts.Add(1 + chance.Next(Math.Min(left, 1 + (length / (1 + chance.Next(8))))));
            foreach (DualFeasible f in DualFeasible.For(length, [.. parts.Append(chance.Next(1, length)).Distinct()], int.MaxValue))
                Assert.True(parts.Sum(f.Of) <= 1 + 1e-9, Invariant($"{f}: {string.Join(' ', parts)} sum to {parts.Sum(f.Of)}"));
        }
    }

    [Fact]
    public void Pieces_that_cannot_share_a_board_count_whole()
    {
        // Five squares over half the board each way need five boards, though by area two would do.
        FreeModel model = new(new([new("board", 100, 100, null, 3, [])], [new("p", 51, 51, 5, true)], new(Laydown.Layout.Sheets.CutProcess.Free)));
        Assert.Equal(15, FreeBounds.Cost(model));
    }

    [Fact]
    public void Cheap_boards_of_which_there_are_few_count_only_as_often()
    {
        FreeModel model = new(new(
            [new("rest", 100, 100, 1, 1, []), new("board", 100, 100, null, 10, [])], [new("p", 100, 50, 6, false)], new(Laydown.Layout.Sheets.CutProcess.Free)));
        Assert.Equal(21, FreeBounds.Cost(model));
    }
}
