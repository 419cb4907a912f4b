using Laydown.Layout.Packing;

namespace Laydown.Layout.Rolls;

/// <summary>Where a roll is cut across from edge to edge so that sections are neither too short nor too long.</summary>
internal static class CutMarks
{
    /// <summary>Most sections joined to one, so that very long rolls stay quick.</summary>
    private const int MostJoined = 2000;

    /// <summary>The pieces with short sections lengthened, and the tops of all sections, gap contained; null where some section is too long whatever is done.</summary>
    /// <param name="spots">Pieces, µm.</param>
    /// <param name="least">Least length of a section, µm, gap contained.</param>
    /// <param name="longest">Greatest length of a section, µm, gap contained; <see cref="int.MaxValue"/> for any.</param>
    /// <param name="many">Whether every cut that can be made is wanted; else as few as can be.</param>
    /// <remarks>
    /// A cut may go where no piece lies across. Sections are joined by a shortest path over these cuts: the least bare length added first,
    /// then the most or the fewest cuts.
    /// </remarks>
    internal static (IReadOnlyList<Spot> Spots, IReadOnlyList<int> Tops)? Of(IReadOnlyList<Spot> spots, int least, int longest, bool many)
    {
        IReadOnlyList<Spot> sorted = [.. spots.OrderBy(s => s.Place.Y).ThenBy(s => s.Place.X)];
        IReadOnlyList<int> cuts = Free(sorted);
        int[]? next = least == 0 && longest == int.MaxValue && !many ? [cuts.Count - 1] : Path(cuts, least, longest, many);
        if (next is null)
            return null;

        List<Spot> moved = [];
        List<int> tops = [];
        int at = 0, shift = 0;
        for (int from = 0; from < cuts.Count - 1; from = next[from])
        {
            while (at < sorted.Count && sorted[at].Place.Y < cuts[next[from]])
            {
                moved.Add(sorted[at] with { Place = sorted[at].Place with { Y = sorted[at].Place.Y + shift } });
                at++;
            }

            shift += Math.Max(0, least - (cuts[next[from]] - cuts[from]));
            tops.Add(cuts[next[from]] + shift);
        }

        return (moved, tops);
    }

    // 0, every height that no piece lies across, and the top.
    private static List<int> Free(IReadOnlyList<Spot> sorted)
    {
        List<int> cuts = [0];
        int top = 0;
        foreach (Spot spot in sorted)
        {
            if (spot.Place.Y >= top && top > 0)
                cuts.Add(top);
            top = Math.Max(top, spot.Place.Top);
        }

        cuts.Add(top);
        return cuts;
    }

    private static int[]? Path(IReadOnlyList<int> cuts, int least, int longest, bool many)
    {
        int count = cuts.Count;
        if (many && least == 0)
            return cuts.Zip(cuts.Skip(1)).All(p => p.Second - p.First <= longest) ? [.. Enumerable.Range(1, count)] : null;

        (long Added, long Cuts)[] cost = new (long, long)[count];
        int[] next = new int[count];
        for (int from = count - 2; from >= 0; from--)
        {
            cost[from] = (long.MaxValue, 0);
            for (int to = from + 1; to < count && to - from <= MostJoined && cuts[to] - cuts[from] <= longest; to++)
            {
                if (cost[to].Added == long.MaxValue)
                    continue;

                (long, long) here = (cost[to].Added + Math.Max(0, least - (cuts[to] - cuts[from])), cost[to].Cuts + (many ? -1 : 1));
                if (here.CompareTo(cost[from]) < 0)
                    (cost[from], next[from]) = (here, to);
            }
        }

        return cost[0].Added == long.MaxValue ? null : next;
    }
}
