namespace Laydown.Layout.Packing;

/// <summary>Fills sheets in a given order: each sheet takes, from first to last, every piece that still fits on it.</summary>
internal static class SheetFill
{
    /// <summary>Sheets until nothing of the order is left. Every type must fit on a bare sheet.</summary>
    internal static IReadOnlyList<FilledSheet> All(
        IReadOnlyList<PieceType> types, IReadOnlyList<Entry> order, Func<IFreeSpace> bareSheet, CancellationToken cancellation)
    {
        int[] left = [.. order.Select(e => e.Copies)];
        List<FilledSheet> sheets = [];
        int first = 0;
        while (first < left.Length)
        {
            cancellation.ThrowIfCancellationRequested();
            sheets.Add(One(types, order, left, bareSheet()));
            while (first < left.Length && left[first] == 0)
                first++;
        }

        return sheets;
    }

    private static FilledSheet One(IReadOnlyList<PieceType> types, IReadOnlyList<Entry> order, int[] left, IFreeSpace space)
    {
        int[] used = new int[left.Length];
        List<Spot> spots = Place(types, order, left, space, used);
        if (spots.Count == 0)
            throw new InvalidOperationException("A piece that fits on a bare sheet found no place on one.");

        // The same picture serves again as often as its scarcest piece is still wanted.
        int repeats = int.MaxValue;
        for (int i = 0; i < left.Length; i++)
            if (used[i] > 0)
                repeats = Math.Min(repeats, left[i] / used[i]);
        for (int i = 0; i < left.Length; i++)
            left[i] -= used[i] * repeats;

        return new(spots, space, repeats);
    }

    /// <summary>Puts down what fits, in order; counts into <paramref name="used"/>.</summary>
    internal static List<Spot> Place(
        IReadOnlyList<PieceType> types, IReadOnlyList<Entry> order, IReadOnlyList<int> left, IFreeSpace space, int[] used)
    {
        List<Spot> spots = [];
        // Bare area only shrinks: a type that found no place once finds none later.
        bool[] over = new bool[types.Count];
        for (int i = 0; i < order.Count; i++)
        {
            PieceType type = types[order[i].Type];
            while (!over[type.Index] && used[i] < left[i])
            {
                if (space.TryPlace(type, out Spot spot))
                {
                    spots.Add(spot);
                    used[i]++;
                }
                else
                {
                    over[type.Index] = true;
                }
            }
        }

        return spots;
    }
}
