using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Places the upright rectangles around pieces in columns from the left, bottom up: a first answer that needs no search.</summary>
internal sealed class BoxFill
{
    private readonly ContourProblem problem;
    private readonly int[] order, left;
    private readonly RectMm[] boxes;
    private readonly Dictionary<string, int> indices;

    private BoxFill(ContourProblem problem)
    {
        this.problem = problem;
        boxes = [.. problem.Pieces.Select(p => PieceBox.At(p, p.Angles.Degrees[0]))];
        left = [.. problem.Pieces.Select(p => p.Copies)];
        indices = problem.Pieces.Select((p, i) => (p.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        order = [.. Enumerable.Range(0, boxes.Length).OrderByDescending(i => boxes[i].WidthMm)];
    }

    /// <summary>Whether all boards are upright rectangles without keep-outs; a strip always is.</summary>
    internal static bool Takes(ContourProblem problem) => problem.Stocks.All(Takes);

    /// <summary>Whether a board is an upright rectangle without keep-outs.</summary>
    internal static bool Takes(ContourStock stock) => stock.KeepOuts is null or [] && BoardKind.IsRectangle(stock.Area);

    internal static ContourResult Fill(ContourProblem problem) => new BoxFill(problem).Filled();

    /// <summary>What one board takes of as many copies as there are; empty where nothing fits.</summary>
    internal static IReadOnlyList<ContourSpot> One(ContourProblem problem, ContourStock stock) => new BoxFill(problem).FillOne(Inside(stock), out _);

    private ContourResult Filled()
    {
        List<ContourSheet> sheets = [];
        double cost = 0, area = 0, length = 0;
        int all = Math.Max(1, left.Sum());
        IEnumerable<(string? Id, RectMm Room, double Cost, int Boards)> rooms = problem.Strip is { } strip
            ? [((string?)null, new RectMm(strip.EdgeMarginMm, strip.EdgeMarginMm, 1e12, strip.WidthMm - (2 * strip.EdgeMarginMm)), 0.0, 1)]
            : problem.Stocks.Select(s => ((string?)s.Id, Inside(s), s.Cost, s.Copies ?? all));
        foreach ((string? id, RectMm room, double price, int boards) in rooms)
        {
            for (int board = 0; board < boards;)
            {
                IReadOnlyList<ContourSpot> spots = FillOne(room, out double used);
                if (spots.Count == 0)
                    break;

                // A board that takes no last copy of any piece comes again the same.
                int times = Math.Min(boards - board, 1 + spots.GroupBy(s => s.PieceId, StringComparer.Ordinal).Min(g => left[indices[g.Key]] / g.Count()));
                sheets.Add(new(id, spots));
                for (int again = 1; again < times; again++)
                    sheets.Add(new(id, [.. spots.Select(s => s with { Copy = Next(indices[s.PieceId]) })]));
                (board, cost, area, length) = (board + times, cost + (times * price), area + (times * room.WidthMm * room.HeightMm), Math.Max(length, used));
            }
        }

        double placed = problem.Pieces.Select((p, i) => (p.Copies - left[i]) * p.Area.AreaMm2).Sum();
        double within = problem.Strip is null ? area : problem.Strip.WidthMm * length;
        return new(sheets, length, cost, within > 0 ? placed / within : 0, Unplaced());
    }

    private List<ContourSpot> FillOne(RectMm room, out double length)
    {
        List<ContourSpot> spots = [];
        double x = room.XMm, y = room.YMm, column = 0, gap = problem.GapMm;
        length = 0;
        foreach (int piece in order)
        {
            RectMm box = boxes[piece];
            while (left[piece] > 0)
            {
                if (y + box.HeightMm > room.TopMm && y > room.YMm)
                    (x, y, column) = (x + column + gap, room.YMm, 0);
                if (y + box.HeightMm > room.TopMm || x + box.WidthMm > room.RightMm)
                    break;

                spots.Add(new(problem.Pieces[piece].Id, Next(piece), x - box.XMm, y - box.YMm, problem.Pieces[piece].Angles.Degrees[0]));
                column = Math.Max(column, box.WidthMm);
                length = Math.Max(length, x + box.WidthMm + room.XMm);
                y += box.HeightMm + gap;
            }
        }

        return spots;
    }

    // The number of a copy that is placed now.
    private int Next(int piece) => problem.Pieces[piece].Copies - left[piece]-- + 1;

    private static RectMm Inside(ContourStock stock)
    {
        RectMm box = stock.Area.Bounds;
        double margin = stock.EdgeMarginMm;
        return new(box.XMm + margin, box.YMm + margin, box.WidthMm - (2 * margin), box.HeightMm - (2 * margin));
    }

    private IReadOnlyList<UnplacedPiece> Unplaced() =>
    [
        .. problem.Pieces.Select((p, i) => (Piece: p, Left: left[i])).Where(p => p.Left > 0).Select(p => new UnplacedPiece(
            p.Piece.Id, p.Left, Invariant($"{p.Piece.Area.Bounds.WidthMm:0.##} × {p.Piece.Area.Bounds.HeightMm:0.##} mm"), ContourJob.WantedRoom)),
    ];
}
