using Laydown.Geometry.Outlines;
using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Copies beyond what is wanted, where pieces allow them: they fill what the emptiest board, or the used length of a strip, would leave.</summary>
public static class ContourOvers
{
    /// <summary>Most copies of a piece that are tried.</summary>
    private const int MostTried = 500;

    /// <summary>Width that a cut across is taken as, mm.</summary>
    private const double CutMm = 0.01;

    /// <summary>The layout with more copies between and beside what lies there; as it was where nothing may be made more or finds a place.</summary>
    /// <param name="problem">What was laid out.</param>
    /// <param name="result">The layout; one that is not whole comes back as it is.</param>
    /// <param name="mostOver">How many more may be made, by piece; pieces not named none.</param>
    /// <param name="cutsMm">Of a strip, where it is cut across: no copy lies there; null for nowhere.</param>
    /// <returns>The same boards, or the same length of strip. Of a board that comes several times each carries the same; further copies bear the numbers after those wanted.</returns>
    public static ContourResult Filled(ContourProblem problem, ContourResult result, IReadOnlyDictionary<string, int> mostOver, IReadOnlyList<double>? cutsMm = null)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(mostOver);
        if (!result.IsWhole || result.Sheets.Count == 0 || mostOver.Values.All(m => m <= 0))
            return result;
        IReadOnlyList<int> last = problem.Strip is null ? SameSheets.Emptiest(problem, result.Sheets) : [0];
        ContourSheet sheet = result.Sheets[last[0]];
        ContourPiece[] wanted = [.. problem.Pieces.Select(p => p with
        {
            Copies = Math.Min(MostTried, mostOver.GetValueOrDefault(p.Id) / last.Count),
            Angles = p.Direction is null ? p.Angles : ContourAngles.Of(AngleOf(p.Direction, problem, result)),
            Direction = null,
        }).Where(p => p.Copies > 0)];
        if (wanted.Length == 0)
            return result;
        ContourResult more = ContourLayout.Solve(ContourProblem.On([Full(problem, result, sheet, cutsMm ?? [])], problem.GapMm, wanted), new(Iterations: 0), null, CancellationToken.None);
        return more.Sheets.Count == 0 ? result : Joined(problem, result, last, more.Sheets[0].Spots);
    }

    private static double AngleOf(string direction, ContourProblem problem, ContourResult result)
    {
        HashSet<string> same = [.. problem.Pieces.Where(p => p.Direction == direction).Select(p => p.Id)];
        return result.Sheets.SelectMany(s => s.Spots).First(s => same.Contains(s.PieceId)).AngleDegrees;
    }

    // The board, or the length used, with what lies there kept out.
    private static ContourStock Full(ContourProblem problem, ContourResult result, ContourSheet sheet, IReadOnlyList<double> cutsMm)
    {
        Dictionary<string, Shape> areas = problem.Pieces.ToDictionary(p => p.Id, p => p.Area, StringComparer.Ordinal);
        IEnumerable<Shape> lying = sheet.Spots.Select(s => ShapeMoving.Moved(ShapeMoving.Turned(areas[s.PieceId], s.AngleDegrees), s.XMm, s.YMm));
        if (problem.Strip is { } strip)
            return new("strip", Shape.Of(new RectMm(0, 0, result.LengthMm, strip.WidthMm)), 1, 0, strip.EdgeMarginMm, [.. lying, .. cutsMm.Select(c => Shape.Of(new RectMm(c - (CutMm / 2), 0, CutMm, strip.WidthMm)))]);
        ContourStock stock = problem.Stocks.First(s => s.Id == sheet.StockId);
        return stock with { Copies = 1, Cost = 0, KeepOuts = [.. stock.KeepOuts ?? [], .. lying] };
    }

    private static ContourResult Joined(ContourProblem problem, ContourResult result, IReadOnlyList<int> last, IReadOnlyList<ContourSpot> more)
    {
        Dictionary<string, int> copies = problem.Pieces.ToDictionary(p => p.Id, p => p.Copies, StringComparer.Ordinal);
        Dictionary<string, double> areas = problem.Pieces.ToDictionary(p => p.Id, p => p.Area.AreaMm2, StringComparer.Ordinal);
        double before = result.Sheets.Sum(s => s.Spots.Sum(p => areas[p.PieceId])), added = last.Count * more.Sum(s => areas[s.PieceId]);
        ContourSheet[] sheets = [.. result.Sheets];
        foreach (int i in last)
            sheets[i] = sheets[i] with { Spots = [.. sheets[i].Spots, .. more.Select(s => s with { Copy = ++copies[s.PieceId] })] };
        return result with { Sheets = sheets, FillShare = result.FillShare * (before + added) / before };
    }
}
