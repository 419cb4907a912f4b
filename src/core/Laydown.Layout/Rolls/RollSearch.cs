using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Rolls;

/// <summary>Looks for the shortest strip: plain orders first, then a walk over orders.</summary>
internal sealed class RollSearch(IReadOnlyList<PieceType> types, int width, RollRules rules)
{
    private static readonly Split[] Splits = [Split.Across, Split.Upright, Split.ShortRest, Split.LargeRest];

    private readonly long least = LeastLength(types, width);
    private IReadOnlyList<Spot> best = [];
    private long bestLength = long.MaxValue;

    internal IReadOnlyList<Spot> Best(CancellationToken cancellation)
    {
        IReadOnlyList<Entry> start = [];
        foreach (IReadOnlyList<Entry> order in Orders.Plain(types))
        {
            long before = bestLength;
            Judge(order, cancellation);
            if (bestLength < before)
                start = order;
        }

        Walk(Orders.InSteps(start), cancellation);
        return best;
    }

    private void Walk(List<Entry> start, CancellationToken cancellation)
    {
        if (start.Count < 2)
            return;

        Chance chance = new(rules.Seed);
        (List<Entry> here, long length) = (start, bestLength);
        int steps = Orders.Steps(rules.Iterations, types);
        for (int i = 0; i < steps && bestLength > least; i++)
        {
            List<Entry> next = Orders.Shaken(here, chance);
            long nextLength = Judge(next, cancellation);
            if (nextLength <= length)
                (here, length) = (next, nextLength);
        }
    }

    private long Judge(IReadOnlyList<Entry> order, CancellationToken cancellation)
    {
        long length = long.MaxValue;
        foreach (bool lying in (ReadOnlySpan<bool>)[true, false])
            foreach (Split split in Splits)
                length = Math.Min(length, Keep(Sections.Fill(types, order, width, lying, split, cancellation)));

        return rules.Process is CutProcess.Guillotine ? length : Math.Min(length, Keep(Unsectioned(order, cancellation)));
    }

    private long Keep(IReadOnlyList<Spot> spots)
    {
        long length = spots.Max(s => (long)s.Place.Top);
        if (length < bestLength)
            (best, bestLength) = (spots, length);

        return length;
    }

    private List<Spot> Unsectioned(IReadOnlyList<Entry> order, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        int tall = (int)Math.Min(int.MaxValue, types.Sum(t => (long)Math.Max(t.W, t.H) * t.Piece.Quantity));
        MaximalRectangles strip = new(width, tall, Fit.Low);
        return SheetFill.Place(types, order, [.. order.Select(e => e.Copies)], strip, new int[order.Count]);
    }

    private static long LeastLength(IReadOnlyList<PieceType> types, int width)
    {
        Int128 area = 0;
        long tallest = 0;
        foreach (PieceType t in types)
        {
            area += (Int128)t.Area * t.Piece.Quantity;
            tallest = Math.Max(tallest, t.MayTurn && t.H <= width ? Math.Min(t.W, t.H) : t.H);
        }

        return Math.Max((long)((area + width - 1) / width), tallest);
    }
}
