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

        // At once, the printed rectangles around what is locked; contours are only told where they do better.
        IReadOnlyList<HandSheet> best = [];
        (int, int, double) rank = (int.MaxValue, 0, 0);
        Offer(FinishRest.Walked(kept, rules, new SearchRules(search.Seed, 0), null, stop));
        Offer(Written(ContourLayout.Solve(ContourProblem.On(stocks, rules.GapMm, wanted), search, r => Offer(Written(r)), stop)));
        return best;

        void Offer(IReadOnlyList<HandSheet> found)
        {
            (int, int, double) now = RankOf(found);
            if (now.CompareTo(rank) >= 0 && best.Count > 0)
                return;
            (best, rank) = (found, now);
            better?.Invoke(found);
        }
    }

    // Copies without a place, sheets, and of equal ones the larger rest in one piece.
    private (int Missing, int Sheets, double Bare) RankOf(IReadOnlyList<HandSheet> sheets) => (
        HandSheets.Missing(sheets, rules).Sum(), sheets.Sum(s => s.Repeats),
        -sheets.SelectMany(s => BareRests.Of(s, rules)).Select(o => Math.Round(o.Size.AreaM2, 3)).DefaultIfEmpty(0).Max());

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
