using Laydown.Layout.Packing;

namespace Laydown.Layout.Boards;

/// <summary>How good a set of filled boards is; less is better.</summary>
/// <param name="Boards">How many boards.</param>
/// <param name="Pictures">How many different pictures.</param>
/// <param name="Spread">1 − mean of the squared fill: small where some boards are full and the last is nearly empty.</param>
/// <param name="Lost">Share of the emptiest board that is not its largest offcut; 1 where that was not looked at.</param>
internal readonly record struct BoardScore(int Boards, int Pictures, double Spread, double Lost)
{
    internal static BoardScore Of(IReadOnlyList<FilledSheet> sheets, BoardArea area)
    {
        double whole = (double)area.Width * area.Height;
        int boards = sheets.Sum(s => s.Repeats);
        double squares = sheets.Sum(s => s.Repeats * (s.UsedArea / whole) * (s.UsedArea / whole));
        return new(boards, sheets.Count, 1 - (squares / boards), 1);
    }

    /// <summary>The same with its largest offcut looked at; costly, so only for those that may win.</summary>
    internal BoardScore WithOffcut(IReadOnlyList<FilledSheet> sheets, BoardArea area, int leastSide)
    {
        FilledSheet emptiest = sheets.MinBy(s => s.UsedArea)!;
        return this with { Lost = 1 - (emptiest.Space.Leftovers(leastSide).Select(b => b.Area).Append(0).Max() / ((double)area.Width * area.Height)) };
    }

    internal bool IsBetterThan(BoardScore other) =>
        (Boards, Pictures, Spread, Lost).CompareTo((other.Boards, other.Pictures, other.Spread, other.Lost)) < 0;

    /// <summary>Whether it is as good but for the offcut, which was not looked at yet.</summary>
    internal bool MayBeat(BoardScore other) => (Boards, Pictures, Spread).CompareTo((other.Boards, other.Pictures, other.Spread)) <= 0;

    /// <summary>What the search walks down: a whole board counts most, then how near the last one is to empty.</summary>
    internal double Slope => Boards + Spread;
}
