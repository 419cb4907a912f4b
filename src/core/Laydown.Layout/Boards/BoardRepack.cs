using Laydown.Layout.Packing;

namespace Laydown.Layout.Boards;

/// <summary>Takes the emptiest board and a few others apart and packs their pieces anew, again and again.</summary>
internal sealed class BoardRepack(IReadOnlyList<PieceType> types, IReadOnlyList<FilledSheet> start, BoardArea area)
{
    /// <summary>So many boards are still looked at one by one; of more, each picture stands for its repeats.</summary>
    private const int MostBoards = 200;

    private readonly List<FilledSheet> sheets = start.Sum(s => s.Repeats) > MostBoards
        ? [.. start]
        : [.. start.SelectMany(s => Enumerable.Repeat(s with { Repeats = 1 }, s.Repeats))];

    /// <summary>The filling as it stands.</summary>
    internal IReadOnlyList<FilledSheet> Sheets => [.. sheets];

    /// <summary>One try; false where nothing was gained and the filling stays as it was.</summary>
    internal bool Step(Func<IFreeSpace> bareSheet, Chance chance, CancellationToken cancellation)
    {
        List<FilledSheet> taken = Pick(chance);
        if (taken.Count < 2)
            return false;

        IReadOnlyList<Entry> order = Mixed(taken.SelectMany(s => s.Spots.Select(p => p.Type)), chance);
        IReadOnlyList<FilledSheet> packed = [.. SheetFill.All(types, order, bareSheet, cancellation)
            .SelectMany(s => Enumerable.Repeat(s with { Repeats = 1 }, s.Repeats))];
        bool fewer = packed.Count < taken.Count;
        if (!fewer && (packed.Count > taken.Count || Squares(packed) < Squares(taken)))
            return false;

        foreach (FilledSheet sheet in taken)
            sheets.RemoveAt(sheets.FindIndex(s => ReferenceEquals(s, sheet)));
        sheets.AddRange(packed);
        return true;
    }

    private List<FilledSheet> Pick(Chance chance)
    {
        List<FilledSheet> single = [.. sheets.Where(s => s.Repeats == 1)];
        if (single.Count == 0)
            return [];

        List<FilledSheet> taken = [single.MinBy(s => s.UsedArea)!];
        single.Remove(taken[0]);
        for (int more = 1 + chance.Below(3); more > 0 && single.Count > 0; more--)
        {
            int i = chance.Below(single.Count);
            taken.Add(single[i]);
            single.RemoveAt(i);
        }

        return taken;
    }

    private List<Entry> Mixed(IEnumerable<int> pieces, Chance chance)
    {
        double noise = 0.6 * chance.Share();
        int key = chance.Below(Orders.KeyCount);
        return [.. pieces
            .Select(t => (Type: t, Key: Orders.Key(key, types[t]) * (1 + (noise * chance.Share()))))
            .OrderByDescending(e => e.Key).ThenBy(e => e.Type).Select(e => new Entry(e.Type, 1))];
    }

    private double Squares(IReadOnlyList<FilledSheet> some)
    {
        double whole = (double)area.Width * area.Height;
        return some.Sum(s => s.UsedArea / whole * (s.UsedArea / whole));
    }
}
