using Laydown.Layout.Packing;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Contours;

/// <summary>
/// Many copies on boards: one board is filled as full as can be and comes again as often as its pieces are wanted, then the next;
/// what is left over is searched as few copies are.
/// </summary>
internal sealed class RepeatedBoards
{
    /// <summary>Most pieces of a board that more are squeezed in beside, and most that are tried on one.</summary>
    private const int MostSqueezed = 400, MostTried = 1500;
    private const float LargestStep = 0.3f;
    private const double MostFill = 0.9999;

    private readonly ContourProblem problem;
    private readonly int mostSearched;
    private readonly ContourJob job;
    private readonly int[] firstItem, bySize;
    private readonly CancellationToken stop;

    // Boards as they come, by stock and copies left: the second look begins with those of the first.
    private readonly Dictionary<string, Board?> filled = new(StringComparer.Ordinal);

    /// <summary>Ready to fill boards.</summary>
    /// <param name="problem">Pieces on boards.</param>
    /// <param name="mostSearched">Copies up to which the rest is searched.</param>
    /// <param name="stop">Ends the work: what is left is then laid out as boxes.</param>
    internal RepeatedBoards(ContourProblem problem, int mostSearched, CancellationToken stop)
    {
        (this.problem, this.mostSearched, this.stop) = (problem, mostSearched, stop);

        // Of each piece as many are held ready as the largest board takes.
        double largest = problem.Stocks.Max(s => s.Area.AreaMm2);
        job = new(problem with { Pieces = [.. problem.Pieces.Select(p => p with { Copies = (int)Math.Min(Math.Min(p.Copies, MostTried), 1 + (largest / p.Area.AreaMm2)) })] });
        firstItem = [.. job.Problem.Pieces.Select((_, i) => job.Problem.Pieces.Take(i).Sum(p => p.Copies))];
        bySize = [.. Enumerable.Range(0, job.Forms.Count).OrderByDescending(i => job.Forms[i].HullRoot * job.Forms[i].Reach)];
    }

    /// <summary>All copies on boards; with 0 iterations as quickly as can be.</summary>
    internal ContourResult Best(SearchRules rules)
    {
        Filling filling = new([.. problem.Pieces.Select(p => p.Copies)], [.. problem.Stocks.Select(s => s.Copies ?? int.MaxValue)], [], BaySearch.Rounds(rules));
        Chance[] chances = [.. Enumerable.Range(0, rules.Workers).Select(w => new Chance((rules.Seed * 1000L) + w))];
        while (!stop.IsCancellationRequested && filling.Left.Any(l => l > 0) && Next(filling, chances) is { } board)
        {
            int times = Times(board, filling);
            if (times < 2 && filling.Left.Sum(l => (long)l) <= mostSearched)
                break;
            for (int i = 0; i < times; i++)
                filling.Sheets.Add(Taken(board, filling));
            filling.Boards[board.Stock] -= times;
        }

        return Joined(filling, rules);
    }

    // The board that costs least for the area it takes, then squeezed where it comes more than once.
    private Board? Next(Filling filling, Chance[] chances)
    {
        Board? best = null;
        double least = double.MaxValue;
        for (int s = 0; s < problem.Stocks.Count; s++)
        {
            Board? board = filling.Boards[s] > 0 ? First(s, filling, chances[0]) : null;
            double price = board is null ? double.MaxValue : (problem.Stocks[s].Cost + (1e-9 * job.Kinds[s].UsableArea)) / AreaOf(board);
            if (price < least)
                (best, least) = (board, price);
        }

        return best is { Poses: { } poses } && Times(best, filling) > 1 && poses.Items.Count <= MostSqueezed
            ? Squeezed(best, poses, filling, chances)
            : best;
    }

    private Board? First(int stock, Filling filling, Chance chance)
    {
        string key = Invariant($"{stock}: {string.Join(',', job.Problem.Pieces.Select((p, i) => Math.Min(filling.Left[i], p.Copies)))}");
        if (!filled.TryGetValue(key, out Board? board) && !stop.IsCancellationRequested)
            filled[key] = board = AsItComes(stock, filling, chance);
        return board;
    }

    // By the contours or, where that takes more, as columns of boxes.
    private Board? AsItComes(int stock, Filling filling, Chance chance)
    {
        List<int> items = [.. bySize.SelectMany(p => Enumerable.Range(firstItem[p], Math.Min(filling.Left[p], job.Problem.Pieces[p].Copies)))];
        Board? nested = FirstFill.Of(job, job.Kinds[stock], [.. items.Take(MostTried)], chance, stop) is { } f ? BoardOf(stock, f) : null;
        if (!BoxFill.Takes(problem.Stocks[stock]))
            return nested;
        IReadOnlyList<ContourPiece> left = [.. problem.Pieces.Select((p, i) => p with { Copies = filling.Left[i] }).Where(p => p.Copies > 0)];
        IReadOnlyList<ContourSpot> boxes = BoxFill.One(problem with { Pieces = left }, problem.Stocks[stock]);
        Board? boxed = boxes.Count > 0 ? new(stock, boxes, null) : null;
        return nested is null || (boxed is not null && AreaOf(boxed) > AreaOf(nested)) ? boxed : nested;
    }

    // One more piece at a time, the largest that is left and goes in.
    private Board Squeezed(Board board, FilledBoard poses, Filling filling, Chance[] chances)
    {
        long rounds = filling.Rounds == long.MaxValue ? long.MaxValue : filling.Rounds / 2;
        foreach (int piece in bySize)
        {
            while (rounds > 0 && !stop.IsCancellationRequested && More(poses, piece, filling) is { } items && Solved(poses, items, chances, ref rounds, filling) is { } fuller)
                poses = fuller;
        }

        return poses.Items.Count > board.Poses!.Items.Count ? BoardOf(board.Stock, poses) : board;
    }

    // The items of a board and one more copy of a piece; null where none is left or the board's area is used up.
    private List<int>? More(FilledBoard board, int piece, Filling filling)
    {
        int there = board.Items.Count(i => job.PieceOf(i.Item) == piece);
        if (there >= Math.Min(filling.Left[piece], job.Problem.Pieces[piece].Copies))
            return null;
        HashSet<int> items = [.. board.Items.Select(i => i.Item)];
        int next = Enumerable.Range(firstItem[piece], there + 1).First(i => !items.Contains(i));
        List<int> more = [.. items.Append(next).Order()];
        return job.DrawnArea(more) <= MostFill * board.Kind.UsableArea ? more : null;
    }

    private FilledBoard? Solved(FilledBoard board, List<int> items, Chance[] chances, ref long rounds, Filling filling)
    {
        BaySearch search = new(BoardFields.Of(job, items, [board.Kind], chances.Length), chances, LargestStep, stop);
        Pose?[] poses = new Pose?[items.Count];
        foreach ((int item, Pose pose) in board.Items)
            poses[items.BinarySearch(item)] = pose;
        (bool solved, long used) = search.Solve(poses, rounds);
        rounds -= used;
        filling.Rounds -= filling.Rounds == long.MaxValue ? 0 : used;
        return solved ? BoardFields.Filled([board.Kind], items, search.Best)[0] : null;
    }

    private Board BoardOf(int stock, FilledBoard filled) =>
        new(stock, [.. filled.Items.Select(p => job.Spot(p.Item, p.Pose, filled.Kind.Left, filled.Kind.Bottom))], filled);

    private double AreaOf(Board board) => board.Spots.Sum(s => job.Forms[IndexOf(s.PieceId)].DrawnArea);

    private int IndexOf(string pieceId) => job.IndexOf(pieceId);

    private int Times(Board board, Filling filling) => Math.Min(
        filling.Boards[board.Stock], board.Spots.GroupBy(s => s.PieceId, StringComparer.Ordinal).Min(g => filling.Left[IndexOf(g.Key)] / g.Count()));

    // Copies are numbered on from board to board.
    private ContourSheet Taken(Board board, Filling filling) => new(problem.Stocks[board.Stock].Id, [.. board.Spots.Select(s =>
    {
        int piece = IndexOf(s.PieceId);
        return s with { Copy = problem.Pieces[piece].Copies - filling.Left[piece]-- + 1 };
    })]);

    // What is left over goes onto the boards left over.
    private ContourResult Joined(Filling filling, SearchRules rules)
    {
        ContourPiece[] left = [.. problem.Pieces.Select((p, i) => p with { Copies = filling.Left[i] }).Where(p => p.Copies > 0)];
        ContourStock[] boards = [.. problem.Stocks.Select((s, i) => s with { Copies = s.Copies is null ? null : filling.Boards[i] }).Where(s => s.Copies is not 0)];
        ContourResult? rest = left.Length == 0 || boards.Length == 0 ? null : Rest(new(left, problem.GapMm, null, boards), rules, filling.Rounds);
        IReadOnlyList<UnplacedPiece> unplaced = rest?.Unplaced
            ?? [.. left.Select(p => new UnplacedPiece(p.Id, p.Copies, Invariant($"{p.Area.Bounds.WidthMm:0.##} × {p.Area.Bounds.HeightMm:0.##} mm"), "a board left over"))];
        ContourSheet[] sheets =
        [
            .. filling.Sheets,
            .. (rest?.Sheets ?? []).Select(s => s with { Spots = [.. s.Spots.Select(p => p with { Copy = p.Copy + problem.Pieces[IndexOf(p.PieceId)].Copies - filling.Left[IndexOf(p.PieceId)] })] }),
        ];
        ContourStock[] used = [.. sheets.Select(s => problem.Stocks.First(b => b.Id == s.StockId))];
        double area = sheets.Sum(s => s.Spots.Sum(p => job.Forms[IndexOf(p.PieceId)].DrawnArea)), whole = used.Sum(s => s.Area.AreaMm2);
        double length = sheets.Length == 0 ? 0 : sheets[^1].Spots.Max(s => PieceBox.Of(problem.Pieces[IndexOf(s.PieceId)], s).RightMm) - used[^1].Area.Bounds.XMm;
        return new(sheets, length, used.Sum(s => s.Cost), whole > 0 ? area / whole : 0, unplaced);
    }

    private ContourResult Rest(ContourProblem rest, SearchRules rules, long rounds)
    {
        BestKept kept = new(null);
        if (BoxFill.Takes(rest))
            kept.Offer(BoxFill.Fill(rest));
        bool few = rest.Pieces.Sum(p => (long)p.Copies) <= mostSearched;
        if (kept.Best is null || (few && !stop.IsCancellationRequested))
            kept.Offer(ContourLayout.Searched(rest, rules with { Iterations = rounds == long.MaxValue ? rounds : Math.Max(0, rounds) * BaySearch.SweepsOfRound }, null, stop));
        return kept.Best!;
    }

    /// <summary>How far the filling has come: copies and boards left, sheets so far, rounds left.</summary>
    private sealed class Filling(int[] left, int[] boards, List<ContourSheet> sheets, long rounds)
    {
        internal int[] Left { get; } = left;

        internal int[] Boards { get; } = boards;

        internal List<ContourSheet> Sheets { get; } = sheets;

        internal long Rounds { get; set; } = rounds;
    }

    /// <summary>One board: what lies on it, and the poses where they come from a search.</summary>
    private sealed record Board(int Stock, IReadOnlyList<ContourSpot> Spots, FilledBoard? Poses);
}
