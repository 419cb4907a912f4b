using Laydown.Layout.Contours;
using Laydown.Layout.Search;

namespace Laydown.Layout.Hands;

/// <summary>Finishes boards of contours by the search for contours; what is locked is kept out of its sheet.</summary>
internal sealed class ContourFinish(IReadOnlyList<HandSheet> kept, HandRules rules)
{
    private const string Bare = "bare";

    /// <summary>The best found.</summary>
    internal static IReadOnlyList<HandSheet> Solve(
        IReadOnlyList<HandSheet> sheets, HandRules rules, SearchRules search, Action<IReadOnlyList<HandSheet>>? better, CancellationToken stop)
    {
        IReadOnlyList<HandSheet> kept = FinishRest.Kept(sheets);
        IReadOnlyList<int> missing = HandSheets.Missing(kept, rules);
        ContourPiece[] wanted = [.. rules.Pieces.Select((p, i) => (p, missing[i])).Where(p => p.Item2 > 0).Select(p => ContourPlaces.Wanted(p.p, p.Item2, rules))];
        return wanted.Length == 0 ? kept : new ContourFinish(kept, rules).Searched(wanted, search, better, stop);
    }

    // Sheets with locked pieces are paid for already, so they cost nothing and are filled first.
    private IReadOnlyList<HandSheet> Searched(ContourPiece[] wanted, SearchRules search, Action<IReadOnlyList<HandSheet>>? better, CancellationToken stop)
    {
        ContourStock[] stocks =
        [
            .. kept.Select((s, i) => ContourPlaces.Stock(Invariant($"{i}"), s.Repeats, 0, s.Spots, rules)),
            ContourPlaces.Stock(Bare, null, 1, [], rules),
        ];
        Action<ContourResult>? told = better is null ? null : r => better(Written(r));
        return Written(ContourLayout.Solve(ContourProblem.On(stocks, rules.GapMm, wanted), search, told, stop));
    }

    private IReadOnlyList<HandSheet> Written(ContourResult result)
    {
        List<HandSheet> all = [];
        for (int i = 0; i < kept.Count; i++)
        {
            // Sheets of one locked picture may be filled differently, or not at all.
            IReadOnlyList<HandSheet> filled = Filled(result, Invariant($"{i}"), kept[i].Spots);
            all.AddRange(filled);
            if (kept[i].Repeats - filled.Sum(s => s.Repeats) is > 0 and var left)
                all.Add(kept[i] with { Repeats = left });
        }

        return [.. all, .. Filled(result, Bare, [])];
    }

    private IReadOnlyList<HandSheet> Filled(ContourResult result, string stock, IReadOnlyList<HandSpot> locked) => HandSheets.Tidy(
        [.. result.Sheets.Where(s => s.StockId == stock && s.Spots.Count > 0).Select(s => new HandSheet(1, [.. locked, .. s.Spots
            .Select(p => ContourPlaces.Hand(p, rules.Find(p.PieceId)!)).OrderBy(p => p.YMm).ThenBy(p => p.XMm)]))]);
}
