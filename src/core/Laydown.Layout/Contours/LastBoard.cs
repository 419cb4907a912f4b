using Laydown.Layout.Search;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Pushes what lies on the emptiest board together along one of its sides, so that the rest comes off in one piece over the whole other side.</summary>
public static class LastBoard
{
    /// <summary>Most pieces of a board that is pushed together, and how much is searched for it: pieces times sweeps, and sweeps.</summary>
    private const int MostPieces = 300, MostWork = 12_000, MostSweeps = 400;

    /// <summary>The layout with a larger rest on its emptiest board; as it was where none is found, or the board is no plain rectangle.</summary>
    /// <param name="problem">What was laid out, on boards.</param>
    /// <param name="result">The layout.</param>
    /// <param name="leastSideMm">Shorter side a rest must have to be kept, mm.</param>
    /// <param name="rules">Chance and the most iterations.</param>
    /// <returns>The same boards with the same pieces.</returns>
    public static ContourResult Pushed(ContourProblem problem, ContourResult result, double leastSideMm, SearchRules rules)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(rules);
        if (problem.Strip is not null || result.Sheets.Count == 0)
            return result;
        IReadOnlyList<int> last = SameSheets.Emptiest(problem, result.Sheets);
        ContourSheet sheet = result.Sheets[last[0]];
        ContourStock stock = problem.Stocks.First(s => s.Id == sheet.StockId);
        if (sheet.Spots.Count > MostPieces || !BoxFill.Takes(stock))
            return result;

        Push push = new(problem, sheet, stock, leastSideMm);
        long sweeps = Math.Min(rules.Iterations, Math.Min(MostSweeps, MostWork / sheet.Spots.Count));
        ContourSpot[] best = push.Best(rules with { Iterations = sweeps, Workers = 1 });
        ContourSheet[] sheets = [.. result.Sheets.Select((s, i) => last.Contains(i) ? s with { Spots = Numbered(best, s) } : s)];
        ContourStock end = problem.Stocks.First(s => s.Id == sheets[^1].StockId);
        Dictionary<string, ContourPiece> pieces = problem.Pieces.ToDictionary(p => p.Id, StringComparer.Ordinal);
        return result with { Sheets = sheets, LengthMm = sheets[^1].Spots.Max(s => PieceBox.Of(pieces[s.PieceId], s).RightMm) - end.Area.Bounds.XMm };
    }

    // The copies that lay on a sheet lie on it again.
    private static ContourSpot[] Numbered(ContourSpot[] spots, ContourSheet sheet)
    {
        Dictionary<string, Queue<int>> copies = sheet.Spots.GroupBy(s => s.PieceId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => new Queue<int>(g.Select(s => s.Copy)), StringComparer.Ordinal);
        return [.. spots.Select(s => s with { Copy = copies[s.PieceId].Dequeue() })];
    }

    /// <summary>The board that is pushed together.</summary>
    private sealed class Push
    {
        private readonly ContourProblem problem;
        private readonly ContourSheet sheet;
        private readonly ContourStock stock;
        private readonly RectMm board;
        private readonly double leastSideMm;
        private readonly Dictionary<string, ContourPiece> pieces;

        internal Push(ContourProblem problem, ContourSheet sheet, ContourStock stock, double leastSideMm)
        {
            (this.problem, this.sheet, this.stock, this.leastSideMm, board) = (problem, sheet, stock, leastSideMm, stock.Area.Bounds);
            Dictionary<string, IGrouping<string, ContourSpot>> there = sheet.Spots.GroupBy(s => s.PieceId, StringComparer.Ordinal).ToDictionary(g => g.Key, StringComparer.Ordinal);

            // Pieces of a direction stay at the angle they lie at.
            pieces = problem.Pieces.Where(p => there.ContainsKey(p.Id)).Select(p => p with
            {
                Copies = there[p.Id].Count(),
                Angles = p.Direction is null ? p.Angles : ContourAngles.Of(there[p.Id].First().AngleDegrees),
                Direction = null,
            }).ToDictionary(p => p.Id, StringComparer.Ordinal);
        }

        internal ContourSpot[] Best(SearchRules rules) => Ways(rules).MaxBy(RestMm2)!;

        // As it lies, then along both sides.
        private IEnumerable<ContourSpot[]> Ways(SearchRules rules)
        {
            yield return [.. sheet.Spots];
            if (Searched(board.HeightMm, pieces.Values, board.WidthMm, rules) is { } along)
                yield return [.. along.Select(s => s with { XMm = s.XMm + board.XMm, YMm = s.YMm + board.YMm })];

            // A strip along the other side is laid out on its side and turned back by a quarter.
            if (Searched(board.WidthMm, pieces.Values.Select(OnSide), board.HeightMm, rules) is { } up)
            {
                yield return [.. up.Select(s => s with
                {
                    XMm = board.XMm + board.WidthMm - s.YMm, YMm = board.YMm + s.XMm, AngleDegrees = (s.AngleDegrees + 90) % 360,
                })];
            }
        }

        private static ContourPiece OnSide(ContourPiece piece) =>
            piece.Angles.Any ? piece : piece with { Angles = ContourAngles.Of([.. piece.Angles.Degrees.Select(d => (d + 270) % 360)]) };

        private IReadOnlyList<ContourSpot>? Searched(double widthMm, IEnumerable<ContourPiece> turned, double roomMm, SearchRules rules)
        {
            ContourProblem strip = ContourProblem.On(new ContourStrip(widthMm, stock.EdgeMarginMm), problem.GapMm, [.. turned]);
            ContourResult result = ContourLayout.Solve(strip, rules, null, CancellationToken.None);
            return result.IsWhole && result.LengthMm <= roomMm ? result.Sheets[0].Spots : null;
        }

        // The larger of the rests beyond all pieces that is wide enough to be kept, mm².
        private double RestMm2(ContourSpot[] spots)
        {
            RectMm[] boxes = [.. spots.Select(s => PieceBox.Of(pieces[s.PieceId], s))];
            double across = board.RightMm - boxes.Max(b => b.RightMm) - problem.GapMm, up = board.TopMm - boxes.Max(b => b.TopMm) - problem.GapMm;
            double Kept(double side, double other) => Math.Min(side, other) >= leastSideMm ? Math.Round(side * other, 3) : 0;
            return Math.Max(Kept(across, board.HeightMm), Kept(up, board.WidthMm));
        }
    }
}
