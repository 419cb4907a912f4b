namespace Laydown.Layout.Contours;

/// <summary>Refuses a problem that a caller should not have put.</summary>
internal static class ContourChecks
{
    internal static void Check(ContourProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (!(problem.GapMm >= 0) || !double.IsFinite(problem.GapMm))
            throw new ArgumentException(Invariant($"Gap: found {problem.GapMm} mm; wanted 0 or more."), nameof(problem));
        if ((problem.Strip is null) == (problem.Stocks.Count == 0))
            throw new ArgumentException("Contours: wanted a strip or boards, one of the two.", nameof(problem));
        if (problem.Pieces.Count == 0)
            throw new ArgumentException("Contours: found no pieces; wanted at least one.", nameof(problem));

        CheckIds([.. problem.Pieces.Select(p => p.Id)], "Piece", nameof(problem));
        CheckIds([.. problem.Stocks.Select(s => s.Id)], "Stock", nameof(problem));
        foreach (ContourPiece piece in problem.Pieces)
            CheckPiece(piece, nameof(problem));
        foreach (ContourStock stock in problem.Stocks)
            CheckStock(stock, nameof(problem));
        if (problem.Strip is { } strip && !(strip.EdgeMarginMm >= 0 && strip.WidthMm > 2 * strip.EdgeMarginMm && double.IsFinite(strip.WidthMm)))
        {
            throw new ArgumentException(
                Invariant($"Strip: found width {strip.WidthMm} mm, margin {strip.EdgeMarginMm} mm; wanted a width over both margins."), nameof(problem));
        }
    }

    private static void CheckPiece(ContourPiece piece, string argument)
    {
        if (piece.Copies < 1)
            throw new ArgumentException(Invariant($"{piece.Id}: found {piece.Copies} copies; wanted 1 or more."), argument);
        if (piece.Area.IsEmpty || !(piece.Area.AreaMm2 > 0))
            throw new ArgumentException(Invariant($"{piece.Id}: found no area; wanted a shape of some area."), argument);
    }

    private static void CheckStock(ContourStock stock, string argument)
    {
        if (stock.Area.IsEmpty || stock.Copies is < 0 || !(stock.Cost >= 0) || !(stock.EdgeMarginMm >= 0))
        {
            throw new ArgumentException(
                Invariant($"{stock.Id}: found {stock.Copies} copies, cost {stock.Cost}, margin {stock.EdgeMarginMm} mm; wanted a shape and none under 0."), argument);
        }
    }

    private static void CheckIds(IReadOnlyList<string> ids, string what, string argument)
    {
        string? twice = ids.GroupBy(i => i, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1)?.Key;
        if (twice is not null)
            throw new ArgumentException($"{what} {twice}: found the id twice; wanted each once.", argument);
    }
}
