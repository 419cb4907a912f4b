using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>Writes what the searches find as layouts of a job.</summary>
/// <param name="job">The job.</param>
/// <param name="shapes">Its shapes.</param>
/// <param name="rules">How it was searched.</param>
internal sealed class JobWriter(LayoutJob job, JobShapes shapes, SearchRules rules)
{
    internal LayoutJob Job => job;

    internal JobShapes Shapes => shapes;

    /// <summary>The pieces of a job of rectangles alone.</summary>
    internal IReadOnlyList<Piece> Rectangles() =>
        [.. job.Pieces.Select(p => new Piece(p.Id, new(p.WidthMm!.Value, p.HeightMm!.Value), 0, p.Quantity, p.MayTurn) { KeepWith = p.KeepWith, Due = p.Due, MostOver = p.OversAllowed })];

    /// <summary>Sheets of rectangles.</summary>
    internal JobLayout Write(IReadOnlyList<(string StockId, SheetLayout Sheet)> sheets, IReadOnlyList<UnplacedPiece> unplaced)
    {
        Dictionary<string, JobPiece> pieces = job.Pieces.ToDictionary(p => p.Id, StringComparer.Ordinal);
        return Whole(
            [.. sheets.Select(s => Sheet(
                s.StockId, s.Sheet.Sheet, s.Sheet.Repeats,
                [.. s.Sheet.Placements.Select(p => new JobSpot(p.PieceId, p.Copy, p.Place.XMm, p.Place.YMm, AngleOf(pieces[p.PieceId], p)))],
                s.Sheet.Offcuts))],
            unplaced);
    }

    /// <summary>A length of roll; <paramref name="strip"/> is null where nothing lies on it.</summary>
    internal JobSheet Roll(string stockId, SizeMm size, SheetLayout? strip, double? startMm)
    {
        Dictionary<string, JobPiece> pieces = job.Pieces.ToDictionary(p => p.Id, StringComparer.Ordinal);
        JobSpot[] spots = [.. (strip?.Placements ?? []).Select(p => new JobSpot(p.PieceId, p.Copy, p.Place.XMm, p.Place.YMm, AngleOf(pieces[p.PieceId], p)))];
        return Sheet(stockId, size, 1, spots, []) with { CutsAcrossMm = strip?.CutsAcrossMm, StartMm = startMm };
    }

    /// <summary>Sheets printed once with their copies numbered over all of them.</summary>
    internal static IReadOnlyList<JobSheet> Numbered(IReadOnlyList<JobSheet> sheets)
    {
        Dictionary<string, int> copies = new(StringComparer.Ordinal);
        return [.. sheets.Select(sheet => sheet with { Spots = [.. sheet.Spots.Select(s => s with { Copy = copies[s.PieceId] = copies.GetValueOrDefault(s.PieceId) + 1 })] })];
    }

    /// <summary>Blanks in lanes, or why they lie in none.</summary>
    internal JobLayout InLanes(JobLanes? lanes, IReadOnlyList<UnplacedPiece> unplaced)
    {
        double placed = lanes?.Place.Lanes.Sum(l => l.Blanks * l.WidthMm * l.FeedMm!.Value) ?? 0;
        double fill = lanes is null ? 0 : 100 * placed / (lanes.Place.BeltWidthMm * lanes.FeedMm);
        return new(job, [], unplaced, 0, fill, rules.Seed, rules.Iterations == long.MaxValue ? null : rules.Iterations, lanes);
    }

    /// <summary>A sheet with its fill.</summary>
    internal JobSheet Sheet(string stockId, SizeMm size, int repeats, IReadOnlyList<JobSpot> spots, IReadOnlyList<RectMm> offcuts)
    {
        JobSheet sheet = new(stockId, size, repeats, spots, offcuts, 0);
        return sheet with { FillPercent = 100 * Placed(sheet) / Area(sheet) };
    }

    /// <summary>The layout with its cost and fill.</summary>
    internal JobLayout Whole(IReadOnlyList<JobSheet> sheets, IReadOnlyList<UnplacedPiece> unplaced)
    {
        double cost = sheets.Sum(s => s.Repeats * CostOf(s));
        double placed = sheets.Sum(s => s.Repeats * Placed(s)), used = sheets.Sum(s => s.Repeats * Area(s));
        return new(job, sheets, unplaced, cost, used > 0 ? 100 * placed / used : 0, rules.Seed, rules.Iterations == long.MaxValue ? null : rules.Iterations);
    }

    private double Placed(JobSheet sheet) => sheet.Spots.Sum(s => shapes.Piece(s.PieceId).AreaMm2);

    private double Area(JobSheet sheet) =>
        job.Stocks.First(s => s.Id == sheet.StockId) is { Contour: not null } ? shapes.Stock(sheet.StockId).AreaMm2 : sheet.Size.AreaM2 * 1e6;

    private double CostOf(JobSheet sheet)
    {
        JobStock stock = job.Stocks.First(s => s.Id == sheet.StockId);
        if (stock.Kind == JobStockKind.Board)
            return stock.Price;

        // Two rolls side by side advance once.
        double advance = sheet.StartMm is > 0 ? 0 : job.Rules.PricePerMetre * sheet.Size.HeightMm / 1000;
        return (stock.RollPricePerM2 * sheet.Size.AreaM2) + advance;
    }

    // A rectangle on its side lies the same at 90 and at 270 degrees: the one that is allowed is written.
    private static double AngleOf(JobPiece piece, Placement placement)
    {
        double angle = 90 * placement.QuarterTurns, other = (angle + 180) % 360;
        return piece.AnyAngle || piece.Angles.Contains(angle) || !piece.Angles.Contains(other) ? angle : other;
    }
}
