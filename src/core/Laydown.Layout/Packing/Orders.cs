namespace Laydown.Layout.Packing;

/// <summary>Orders in which pieces are packed.</summary>
internal static class Orders
{
    /// <summary>Up to so many copies each copy is moved on its own; above, a whole type at a time.</summary>
    private const int MostSingleCopies = 400;

    private static readonly Func<PieceType, double>[] Keys =
    [
        t => t.Area,
        t => Math.Max(t.W, t.H) + (Math.Min(t.W, t.H) * 1e-3),
        t => Math.Min(t.W, t.H) + (Math.Max(t.W, t.H) * 1e-3),
        t => t.H + (t.W * 1e-3),
        t => t.W + (t.H * 1e-3),
        t => (double)t.W + t.H,
        t => Math.Max(t.W, t.H) / (double)Math.Min(t.W, t.H),
    ];

    /// <summary>How many orders of so many copies cost about as much as the asked number of small ones: work is bounded, not only steps.</summary>
    internal static int Steps(int iterations, IReadOnlyList<PieceType> types)
    {
        long copies = types.Sum(t => (long)t.Piece.Quantity);
        return (int)(iterations * Math.Min(1, MostSingleCopies / (double)copies));
    }

    /// <summary>How many keys there are.</summary>
    internal static int KeyCount => Keys.Length;

    /// <summary>A key of a type: the greater comes first.</summary>
    internal static double Key(int key, PieceType type) => Keys[key](type);

    /// <summary>The plain orders: largest first by area, by either side, by perimeter, by slimness.</summary>
    internal static IReadOnlyList<IReadOnlyList<Entry>> Plain(IReadOnlyList<PieceType> types) =>
        [.. Keys.Select(key => (IReadOnlyList<Entry>)[.. types
            .OrderByDescending(key).ThenBy(t => t.Index).Select(t => new Entry(t.Index, t.Piece.Quantity))])];

    /// <summary>The order with each copy as a step of its own, where there are not too many.</summary>
    internal static List<Entry> InSteps(IReadOnlyList<Entry> order) =>
        order.Sum(e => (long)e.Copies) > MostSingleCopies
            ? [.. order]
            : [.. order.SelectMany(e => Enumerable.Repeat(new Entry(e.Type, 1), e.Copies))];

    /// <summary>A neighbour of an order: one to three steps moved or swapped.</summary>
    internal static List<Entry> Shaken(IReadOnlyList<Entry> order, Chance chance)
    {
        List<Entry> shaken = [.. order];
        for (int moves = 1 + chance.Below(3); moves > 0; moves--)
        {
            int from = chance.Below(shaken.Count), to = chance.Below(shaken.Count);
            if (chance.Below(2) == 0)
            {
                (shaken[from], shaken[to]) = (shaken[to], shaken[from]);
                continue;
            }

            Entry moved = shaken[from];
            shaken.RemoveAt(from);
            shaken.Insert(to, moved);
        }

        return shaken;
    }

    /// <summary>A fresh order: a plain key with noise of up to 30 %.</summary>
    internal static List<Entry> Fresh(IReadOnlyList<PieceType> types, Chance chance)
    {
        Func<PieceType, double> key = Keys[chance.Below(Keys.Length)];
        double noise = 0.3 * chance.Share();
        return [.. InSteps([.. types.Select(t => new Entry(t.Index, t.Piece.Quantity))])
            .Select(e => (Entry: e, Key: key(types[e.Type]) * (1 + (noise * chance.Share()))))
            .OrderByDescending(e => e.Key).ThenBy(e => e.Entry.Type).Select(e => e.Entry)];
    }
}
