using Laydown.Geometry.Shapes;
using Laydown.Layout.Jobs;
using Laydown.Measures;

namespace Laydown.Formats.Layouts;

/// <summary>Lines of one sheet of a layout, as every file of it draws them.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Cuts">Rings to cut along, with the piece and copy each belongs to; mm, y upward; holes first, so that they are cut before their piece comes free.</param>
/// <param name="Edge">Outline of the stock.</param>
internal sealed record LayoutDrawing(JobSheet Sheet, IReadOnlyList<(string Piece, int Copy, IReadOnlyList<PointMm> Ring)> Cuts, IReadOnlyList<IReadOnlyList<PointMm>> Edge)
{
    /// <summary>Where a roll is cut across from edge to edge: from and to, mm.</summary>
    internal IReadOnlyList<IReadOnlyList<PointMm>> Across =>
        [.. (Sheet.CutsAcrossMm ?? []).Select(y => (IReadOnlyList<PointMm>)[new(0, y), new(Sheet.Size.WidthMm, y)])];

    /// <summary>All sheets of a layout.</summary>
    internal static IReadOnlyList<LayoutDrawing> Of(JobLayout layout)
    {
        JobShapes shapes = new(layout.Job);
        return [.. layout.Sheets.Select(s => Of(layout.Job, s, shapes))];
    }

    private static LayoutDrawing Of(LayoutJob job, JobSheet sheet, JobShapes shapes)
    {
        bool shaped = job.Stocks.First(s => s.Id == sheet.StockId).Contour is not null;
        Shape edge = shaped ? shapes.Stock(sheet.StockId) : Shape.Of(new RectMm(0, 0, sheet.Size.WidthMm, sheet.Size.HeightMm));
        return new(
            sheet,
            [.. sheet.Spots.SelectMany(s => Rings(shapes.Lying(s)).Select(r => (s.PieceId, s.Copy, r)))],
            [.. Rings(edge)]);
    }

    private static IEnumerable<IReadOnlyList<PointMm>> Rings(Shape shape) => shape.Holes().Concat(shape.OuterRings()).Select(r => r.Points);
}
