using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Boards;

/// <summary>Copies beyond what is wanted, where pieces allow them: they fill what the last board would leave.</summary>
internal static class BoardOvers
{
    private const long MostSteps = 2000;

    /// <summary>The layout with its emptiest board filled; as it was where nothing may be made more, or a number of stages of cuts is to be kept.</summary>
    internal static LayoutResult Filled(LayoutResult result, IReadOnlyList<Piece> pieces, BoardRules rules, SearchRules search, CancellationToken stop)
    {
        if (!result.IsWhole || pieces.All(p => p.MostOver <= 0) || rules is { Process: CutProcess.Guillotine, MostStages: > 0 })
            return result;

        // What lies there stays; whole sheets are not to be had, so only room beside it is taken. Over copies lie on every repeat of the sheet.
        int last = Enumerable.Range(0, result.Sheets.Count).MinBy(i => (result.Sheets[i].FillPercent, i));
        SheetLayout sheet = result.Sheets[last];
        SheetLayout one = sheet with { Repeats = 1, Placements = [.. sheet.Placements.Select((p, i) => p with { Copy = i + 1, Locked = true })] };
        Dictionary<string, int> there = sheet.Placements.GroupBy(p => p.PieceId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        IReadOnlyList<Piece> wanted = [.. pieces.Select(p => p with { Quantity = there.GetValueOrDefault(p.Id) + (Math.Max(0, p.MostOver) / sheet.Repeats) })
            .Where(p => p.Quantity > 0)];
        BoardRules none = rules with { Stocks = [.. (rules.Stocks ?? [new("", rules.Sheet, null, 1, rules.EdgeMarginMm)]).Select(s => s with { OnHand = 0 })] };
        LayoutResult filled = BoardLayout.Solve(wanted, none, [one], search with { Iterations = Math.Min(MostSteps, search.Iterations) }, null, stop);
        return Joined(result, last, filled.Sheets[0], pieces);
    }

    // Copies over what is wanted bear the numbers after those wanted.
    private static LayoutResult Joined(LayoutResult result, int last, SheetLayout filled, IReadOnlyList<Piece> pieces)
    {
        SheetLayout sheet = result.Sheets[last];
        Dictionary<string, int> next = pieces.ToDictionary(p => p.Id, p => p.Quantity + 1, StringComparer.Ordinal);
        List<Placement> over = [];
        foreach (Placement placement in filled.Placements.Where(p => !p.Locked))
        {
            over.Add(placement with { Copy = next[placement.PieceId] });
            next[placement.PieceId] += sheet.Repeats;
        }

        SheetLayout whole = over.Count == 0 ? sheet : sheet with { Placements = [.. sheet.Placements, .. over], Offcuts = filled.Offcuts };
        return result with { Sheets = [.. result.Sheets.Select((s, i) => i == last ? whole : s)] };
    }
}
