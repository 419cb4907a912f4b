using Laydown.Layout.Hands;
using Laydown.Layout.Jobs;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>The layout of a run as the layout of a job, which can be checked, drawn and cut by itself: pieces in the size they are cut to.</summary>
public static class RunJob
{
    /// <summary>The layout as it is saved.</summary>
    public static JobLayout Of(OpenedLayout opened)
    {
        ArgumentNullException.ThrowIfNull(opened);
        HandRules rules = opened.Rules;
        LayoutJob job = new(
            Invariant($"Run {opened.Record.Run.Id}, layout {LayoutMark.Short(opened.Mark)}"), [.. rules.Pieces.Select(p => PieceOf(p with { Printed = opened.Rooms.PrintedOf(p) }, rules))], [StockOf(opened)],
            new(0, rules.GapMm, rules.Process, rules.OffcutLeastSideMm, rules.LeadMm, rules.LeadMm));
        IReadOnlyList<SheetLayout> layouts = opened.LayoutsOf(opened.Sheets);
        IReadOnlyList<JobSheet> sheets = [.. layouts.Select((l, i) => SheetOf(l, opened.Sheets[i], job.Stocks[0], rules))];
        double area = sheets.Sum(s => s.Repeats * s.Size.AreaM2);
        return new(
            job, sheets, Unplaced(opened), CostOf(sheets, job.Stocks[0]), area > 0 ? sheets.Sum(s => s.Repeats * s.FillPercent * s.Size.AreaM2) / area : 0, 1, null);
    }

    private static JobPiece PieceOf(Piece piece, HandRules rules)
    {
        IReadOnlyList<double>? angles = piece.MayTurn ? null : [0, 180];
        if (rules.Contours?.Of(piece.Id) is { } outline)
        {
            JobContour contour = new(Flat(outline.Outer), outline.Holes.Count == 0 ? null : [.. outline.Holes.Select(Flat)]);
            return new(piece.Id, piece.Quantity, null, null, contour, angles) { KeepWith = piece.KeepWith, Due = piece.Due, OversAllowed = piece.MostOver };
        }

        return new(piece.Id, piece.Quantity, piece.Printed.WidthMm - (2 * piece.BleedMm), piece.Printed.HeightMm - (2 * piece.BleedMm), null, angles)
        {
            KeepWith = piece.KeepWith,
            Due = piece.Due,
            OversAllowed = piece.MostOver,
        };
    }

    private static JobStock StockOf(OpenedLayout opened)
    {
        HandRules rules = opened.Rules;
        Stock stock = opened.Context.Stock;
        double price = (double)stock.Price.Units;
        return new(
            rules.StockId ?? stock.Id, rules.IsRoll ? JobStockKind.Roll : JobStockKind.Board, rules.Sheet.WidthMm, rules.Sheet.HeightMm, null,
            rules.IsRoll ? price * 1000 / stock.WidthMm : price, rules.EdgeMarginMm, null, rules.KeepOuts.Count > 0 ? rules.KeepOuts : null);
    }

    private static JobSheet SheetOf(SheetLayout layout, HandSheet sheet, JobStock stock, HandRules rules)
    {
        JobSpot[] spots = [.. layout.Placements.Select((p, i) => SpotOf(p, sheet.Spots[i], rules))];
        double cut = layout.Placements.Sum(p => layout.OutlineOf(p.PieceId)?.AreaMm2 / 1e6 ?? p.Place.Grown(-rules.Find(p.PieceId)!.BleedMm).Size.AreaM2);
        return new(stock.Id, layout.Sheet, layout.Repeats, spots, layout.Offcuts, 100 * cut / layout.Sheet.AreaM2);
    }

    private static JobSpot SpotOf(Placement placement, HandSpot spot, HandRules rules)
    {
        RectMm box = rules.Contours is null ? placement.Place.Grown(-rules.Find(placement.PieceId)!.BleedMm) : rules.LyingOf(spot).Box;
        return new(placement.PieceId, placement.Copy, box.XMm, box.YMm, placement.AngleDegrees);
    }

    private static IReadOnlyList<UnplacedPiece> Unplaced(OpenedLayout opened) => [.. HandSheets.Missing(opened.Sheets, opened.Rules)
        .Select((m, i) => (Piece: opened.Rules.Pieces[i], Copies: m)).Where(m => m.Copies > 0).Select(m => new UnplacedPiece(m.Piece.Id, m.Copies, "no place", "a place on a sheet"))];

    private static double CostOf(IReadOnlyList<JobSheet> sheets, JobStock stock) =>
        sheets.Sum(s => s.Repeats * (stock.Kind == JobStockKind.Roll ? stock.Price * s.Size.AreaM2 : stock.Price));

    private static IReadOnlyList<double> Flat(IReadOnlyList<PointMm> ring) => [.. ring.SelectMany(p => (double[])[p.XMm, p.YMm])];
}
