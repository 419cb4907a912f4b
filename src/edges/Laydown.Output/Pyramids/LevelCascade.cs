namespace Laydown.Output.Pyramids;

/// <summary>Adds rows of sums up, level by level: two rows of one level, and in them two neighbours, make a row of the next.</summary>
/// <remarks>Sums are exact whole numbers, so that a level holds the means of the picture itself, not means of rounded means.</remarks>
/// <param name="shape">Sizes.</param>
/// <param name="inks">Inks; a row of sums holds ink after ink.</param>
/// <param name="from">Level of the rows that are put in.</param>
/// <param name="to">Last level.</param>
/// <param name="made">Told each row of each level, the ones put in among them; the sums are used again afterwards.</param>
internal sealed class LevelCascade(LevelShape shape, int inks, int from, int to, Action<int, int, ulong[]> made)
{
    private readonly ulong[][] waiting = [.. Enumerable.Range(from, to - from + 1).Select(level => new ulong[inks * shape.ColumnsAt(level)])];

    /// <summary>Puts a row in; rows of a level come in ascending order.</summary>
    /// <param name="row">Row of level <c>from</c>.</param>
    /// <param name="sums">Its sums.</param>
    public void Add(int row, ulong[] sums) => Add(from, row, sums);

    private void Add(int level, int row, ulong[] sums)
    {
        made(level, row, sums);
        if (level == to)
            return;

        // An even row waits for the next, unless it is the last of its level.
        ulong[] held = waiting[level - from];
        if ((row & 1) == 0)
        {
            sums.CopyTo(held, 0);
            if (row != shape.RowsAt(level) - 1)
                return;
        }
        else
        {
            for (int x = 0; x < held.Length; x++)
                held[x] += sums[x];
        }

        // Two neighbours become one.
        int columns = shape.ColumnsAt(level), half = shape.ColumnsAt(level + 1);
        ulong[] next = new ulong[inks * half];
        for (int ink = 0; ink < inks; ink++)
            Halve(held.AsSpan(ink * columns, columns), next.AsSpan(ink * half, half));
        Add(level + 1, row >> 1, next);
    }

    private static void Halve(ReadOnlySpan<ulong> row, Span<ulong> half)
    {
        int pairs = row.Length / 2;
        for (int x = 0; x < pairs; x++)
            half[x] = row[2 * x] + row[(2 * x) + 1];
        if (half.Length > pairs)
            half[pairs] = row[^1];
    }
}
