using Laydown.Layout.Sheets;

namespace Laydown.Layout.Boards;

/// <summary>Which pieces want to share boards, and over how many boards they came to lie.</summary>
public static class Together
{
    /// <summary>For each piece the number of what it wants to lie with, from 0; −1 where it wants nothing.</summary>
    /// <remarks>A set that is named counts before a due date; a due date counts only where there are several.</remarks>
    internal static int[] Groups(IReadOnlyList<Piece> pieces)
    {
        Dictionary<string, int> numbers = new(StringComparer.Ordinal);
        bool dates = pieces.Select(p => p.Due).Distinct().Skip(1).Any();
        return
        [
            .. pieces.Select(p => p.KeepWith is { } set ? Number("set " + set) : dates && p.Due is { } due ? Number(Invariant($"due {due:yyyy-MM-dd}")) : -1),
        ];
        int Number(string key) => numbers.TryGetValue(key, out int known) ? known : numbers[key] = numbers.Count;
    }

    /// <summary>For each set the boards its pieces lie on; sets of which nothing lies anywhere are left out.</summary>
    /// <param name="sheets">For each layout: what of its area each piece takes by its id, the area pieces may take, any one unit, and how often it is cut.</param>
    /// <param name="setOf">The set of a piece by its id; null for none.</param>
    public static IReadOnlyList<SetSpread> Spreads(IReadOnlyList<SetSheet> sheets, Func<string, string?> setOf)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(setOf);
        if (sheets.Count == 0)
            return [];
        double largest = sheets.Max(s => s.Area);
        return [.. sheets.SelectMany(s => s.Pieces.Select(p => (Set: setOf(p.PieceId), Sheet: s, p.Area))).Where(p => p.Set is not null)
            .GroupBy(p => p.Set!, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new SetSpread(
                g.Key, g.Select(p => p.Sheet).Distinct(ReferenceEqualityComparer.Instance).Cast<SetSheet>().Sum(s => s.Repeats),
                (int)Math.Max(1, Math.Ceiling((g.Sum(p => p.Sheet.Repeats * p.Area) / largest) - 1e-9))))];
    }
}
