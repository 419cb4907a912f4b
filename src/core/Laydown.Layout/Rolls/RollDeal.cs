using Laydown.Layout.Packing;

namespace Laydown.Layout.Rolls;

/// <summary>Deals copies out to two rolls that advance together, so that the longer is short.</summary>
/// <param name="fill">Fills a roll quickly.</param>
/// <param name="seed">Seed of the moves.</param>
internal sealed class RollDeal(RollFill fill, int seed)
{
    private const int Moves = 40;

    /// <summary>Each copy on the roll it must lie on, else where least lies by area over width, largest first.</summary>
    /// <param name="types">Pieces.</param>
    /// <param name="widths">Usable width of each roll, µm.</param>
    /// <param name="own">For each type the roll it must lie on, or −1.</param>
    internal static int[][] ByArea(IReadOnlyList<PieceType> types, IReadOnlyList<int> widths, IReadOnlyList<int> own)
    {
        int[][] counts = [.. widths.Select(_ => new int[types.Count])];
        double[] length = new double[widths.Count];
        foreach (PieceType type in types.OrderBy(t => own[t.Index] < 0).ThenByDescending(t => t.Area).ThenBy(t => t.Index))
            for (int copy = 0; copy < type.Piece.Quantity; copy++)
            {
                int roll = own[type.Index] >= 0 ? own[type.Index] : Enumerable.Range(0, widths.Count).Where(r => type.Fits(widths[r], int.MaxValue)).MinBy(r => length[r]);
                counts[roll][type.Index]++;
                length[roll] += type.Area / (double)widths[roll];
            }

        return counts;
    }

    /// <summary>Moves copies from the longer roll to the shorter where that shortens the longer one.</summary>
    internal int[][] Balanced(int[][] counts, CancellationToken stop)
    {
        Chance chance = new(seed);
        int[] lengths = Lengths(counts, stop);
        for (int i = 0; i < Moves && !stop.IsCancellationRequested; i++)
        {
            int from = lengths[0] >= lengths[1] ? 0 : 1, type = chance.Below(fill.Types.Count);
            if (counts[from][type] == 0 || fill.Own[type] >= 0 || !fill.Types[type].Fits(fill.Widths[1 - from], fill.Longest))
                continue;

            int[][] moved = [[.. counts[0]], [.. counts[1]]];
            moved[from][type]--;
            moved[1 - from][type]++;
            int[] now = Lengths(moved, stop);
            if (now.Max() <= lengths.Max())
                (counts, lengths) = (moved, now);
        }

        return counts;
    }

    private int[] Lengths(int[][] counts, CancellationToken stop) => [.. counts.Select((c, roll) => fill.QuickLength(c, roll, seed, stop))];
}
