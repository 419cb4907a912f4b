using Laydown.Layout.Packing;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Contours;

/// <summary>
/// Looks for the cheapest boards: fills board after board, then tries to do with one less or with a cheaper one by moving overlaps apart
/// over all boards at once, and shortens the use of the last board in between.
/// </summary>
internal sealed class BoardSearch
{
    private const float LargestStep = 0.3f;
    private const double MostFill = 0.9999;
    private const int NodesOfRound = 80;

    /// <summary>One of so many rounds is kept for shortening the last board, however long the search for fewer boards goes on.</summary>
    private const int KeptShare = 3;

    private readonly ContourJob job;
    private readonly SearchRules rules;
    private readonly Action<ContourResult>? better;
    private readonly CancellationToken stop;
    private readonly Chance[] chances;
    private readonly List<int> items = [];
    private readonly List<int> unplaced = [];
    private List<FilledBoard> best = [];
    private readonly long kept;
    private long roundsLeft;

    internal BoardSearch(ContourJob job, SearchRules rules, Action<ContourResult>? better, CancellationToken stop)
    {
        (this.job, this.rules, this.better, this.stop) = (job, rules, better, stop);
        chances = [.. Enumerable.Range(0, rules.Workers).Select(w => new Chance((rules.Seed * 1000L) + w))];
        roundsLeft = BaySearch.Rounds(rules);
        kept = roundsLeft == long.MaxValue ? 0 : roundsLeft / KeptShare;
    }

    /// <summary>The cheapest layout found.</summary>
    internal ContourResult Best()
    {
        First();
        Report();
        TileBoards? tiles = unplaced.Count == 0 ? TileBoards.Of(job, chances) : null;
        long rounds = 50;
        while (best.Count > 0 && roundsLeft > 0 && !stop.IsCancellationRequested)
        {
            if (roundsLeft > kept && Cheaper())
                continue;
            if (tiles is not null && best.Count > tiles.Boards && tiles.Search(rounds * NodesOfRound, stop) is { } full)
                return full;
            if (!Shorter(Math.Min(rounds, roundsLeft)))
                rounds *= 2;
        }

        return Result();
    }

    /// <summary>Fills board after board, each time the kind that costs least for the area it takes.</summary>
    private void First()
    {
        List<int> open = [.. Enumerable.Range(0, job.Items).OrderByDescending(i => job.FormOf(i).HullRoot * job.FormOf(i).Reach)];
        int[] left = [.. job.Kinds.Select(k => k.Stock.Copies ?? int.MaxValue)];
        while (open.Count > 0)
        {
            int chosen = -1;
            FilledBoard? filled = null;
            double least = double.MaxValue;
            for (int k = 0; k < job.Kinds.Count; k++)
            {
                FilledBoard? next = left[k] > 0 ? FirstFill.Of(job, job.Kinds[k], open, chances[0], stop) : null;
                double price = next is null ? double.MaxValue : PriceOfArea(next);
                if (price < least)
                    (chosen, filled, least) = (k, next, price);
            }

            if (filled is null)
                break;
            left[chosen]--;
            best.Add(filled);
            HashSet<int> done = [.. filled.Items.Select(p => p.Item)];
            open.RemoveAll(done.Contains);
        }

        unplaced.AddRange(open);
        items.AddRange(best.SelectMany(b => b.Items.Select(p => p.Item)).Order());
    }

    private double PriceOfArea(FilledBoard board) => (board.Kind.Stock.Cost + (1e-9 * board.Kind.UsableArea)) / job.DrawnArea(board.Items.Select(p => p.Item));

    /// <summary>Tries every choice of boards that is one change cheaper, the roomiest first.</summary>
    private bool Cheaper()
    {
        foreach (List<(BoardKind Kind, int Old)> choice in Choices())
        {
            BoardKind[] kinds = [.. choice.Select(c => c.Kind)];
            BaySearch search = new(BoardFields.Of(job, items, kinds, rules.Workers), chances, LargestStep, stop);
            Pose?[] poses = new Pose?[items.Count];
            for (int b = 0; b < choice.Count; b++)
            {
                foreach ((int item, Pose pose) in choice[b].Old < 0 ? [] : best[choice[b].Old].Items)
                    poses[items.BinarySearch(item)] = pose with { Bay = b };
            }

            (bool solved, long used) = search.Solve(poses, roundsLeft - kept);
            roundsLeft -= used;
            if (solved)
            {
                Take(BoardFields.Filled(kinds, items, search.Best));
                return true;
            }

            if (stop.IsCancellationRequested || roundsLeft <= kept)
                return false;
        }

        return false;
    }

    /// <summary>All boards less one, or with one in the place of a dearer one.</summary>
    private List<List<(BoardKind Kind, int Old)>> Choices()
    {
        double wanted = job.DrawnArea(items), now = best.Sum(b => b.Kind.Stock.Cost);
        List<List<(BoardKind Kind, int Old)>> all = [];
        foreach (int b in Enumerable.Range(0, best.Count).OrderBy(b => job.DrawnArea(best[b].Items.Select(i => i.Item))).DistinctBy(b => best[b].Kind))
        {
            List<(BoardKind Kind, int Old)> rest = [.. best.Select((f, i) => (f.Kind, i)).Where(p => p.i != b)];
            if (rest.Count > 0)
                all.Add(rest);
            foreach (BoardKind kind in job.Kinds.Where(k => k.Stock.Cost < best[b].Kind.Stock.Cost && best.Count(f => f.Kind == k) < (k.Stock.Copies ?? int.MaxValue)))
                all.Add([.. rest, (kind, -1)]);
        }

        return [.. all.Where(c => c.Sum(k => k.Kind.UsableArea) * MostFill >= wanted).OrderByDescending(c => c.Sum(k => k.Kind.UsableArea)).ThenBy(c => c.Sum(k => k.Kind.Stock.Cost))];
    }

    /// <summary>Shortens the use of the emptiest board for some rounds.</summary>
    private bool Shorter(long rounds)
    {
        best = [.. best.OrderByDescending(b => job.DrawnArea(b.Items.Select(i => i.Item)) / b.Kind.UsableArea)];
        BoardKind[] kinds = [.. best.Select(b => b.Kind)];
        IReadOnlyList<Field> fields = BoardFields.Of(job, items, kinds, rules.Workers);
        BaySearch search = new(fields, chances, LargestStep, stop);
        for (int b = 0; b < best.Count; b++)
        {
            foreach ((int item, Pose pose) in best[b].Items)
                fields[0].Put(items.BinarySearch(item), pose with { Bay = b });
        }

        search.Begin();
        roundsLeft -= search.Run(rounds, () => Take(BoardFields.Filled(kinds, items, search.Best)));
        return search.IsEmptied;
    }

    private void Take(IReadOnlyList<FilledBoard> boards)
    {
        best = [.. boards.Where(b => b.Items.Count > 0)];
        Report();
    }

    private void Report() => better?.Invoke(Result());

    private ContourResult Result()
    {
        List<ContourSheet> sheets = [.. best.Select(b => new ContourSheet(b.Kind.Stock.Id, [.. b.Items.Select(p => job.Spot(p.Item, p.Pose, b.Kind.Left, b.Kind.Bottom))]))];
        double last = best.Count == 0 ? 0 : best[^1].Items.Select((p, i) => job.RightEnd(p.Item, sheets[^1].Spots[i])).Max() - best[^1].Kind.Left;
        double boards = best.Sum(b => b.Kind.Stock.Area.AreaMm2);
        IReadOnlyList<UnplacedPiece> missing = job.Unplaced(unplaced, ContourJob.WantedRoom);
        return new(sheets, last, best.Sum(b => b.Kind.Stock.Cost), boards > 0 ? job.DrawnArea(items) / boards : 0, missing);
    }
}
