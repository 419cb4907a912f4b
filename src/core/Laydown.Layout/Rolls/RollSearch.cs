using Laydown.Layout.Packing;

namespace Laydown.Layout.Rolls;

/// <summary>Looks for the shortest roll of sections: plain orders first, then a walk over orders.</summary>
/// <param name="types">Pieces; each fits the width and the longest section one way or the other.</param>
/// <param name="width">Usable width, µm.</param>
/// <param name="seed">Seed of the walk.</param>
/// <param name="iterations">Orders tried after the plain ones, fewer for many copies.</param>
/// <param name="longest">Greatest length of a section, µm.</param>
internal sealed class RollSearch(IReadOnlyList<PieceType> types, int width, int seed, int iterations, int longest)
{
    private static readonly Split[] Splits = [Split.Across, Split.Upright, Split.ShortRest, Split.LargeRest];

    private readonly long least = LeastLength(types, width);
    private IReadOnlyList<Spot> best = [];
    private long bestLength = long.MaxValue;

    internal IReadOnlyList<Spot> Best(CancellationToken stop)
    {
        IReadOnlyList<Entry> start = [];
        foreach (IReadOnlyList<Entry> order in Orders.Plain(types))
        {
            long before = bestLength;
            Judge(order);
            if (bestLength < before)
                start = order;
            if (stop.IsCancellationRequested)
                return best;
        }

        Walk(Orders.InSteps(start), stop);
        return best;
    }

    private void Walk(List<Entry> start, CancellationToken stop)
    {
        if (start.Count < 2)
            return;

        Chance chance = new(seed);
        (List<Entry> here, long length) = (start, bestLength);
        int steps = Orders.Steps(iterations, types);
        for (int i = 0; i < steps && bestLength > least && !stop.IsCancellationRequested; i++)
        {
            List<Entry> next = Orders.Shaken(here, chance);
            long nextLength = Judge(next);
            if (nextLength <= length)
                (here, length) = (next, nextLength);
        }
    }

    private long Judge(IReadOnlyList<Entry> order)
    {
        long length = long.MaxValue;
        foreach (bool lying in (ReadOnlySpan<bool>)[true, false])
            foreach (Split split in Splits)
                length = Math.Min(length, Keep(Sections.Fill(types, order, new(width, longest), lying, split)));

        return length;
    }

    private long Keep(IReadOnlyList<Spot> spots)
    {
        long length = spots.Max(s => (long)s.Place.Top);
        if (spots.Count > best.Count || (spots.Count == best.Count && length < bestLength))
            (best, bestLength) = (spots, length);

        return length;
    }

    /// <summary>A length that no filling of all pieces is under, µm: their area over the width, or the shorter side of the tallest.</summary>
    internal static int LeastLength(IReadOnlyList<PieceType> types, int width)
    {
        Int128 area = 0;
        long tallest = 0;
        foreach (PieceType t in types)
        {
            area += (Int128)t.Area * t.Piece.Quantity;
            tallest = Math.Max(tallest, t.MayTurn && t.H <= width ? Math.Min(t.W, t.H) : t.H);
        }

        return (int)Math.Min(int.MaxValue, Math.Max((long)((area + width - 1) / width), tallest));
    }
}
