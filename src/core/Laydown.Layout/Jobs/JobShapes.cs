using Laydown.Geometry.Outlines;
using Laydown.Geometry.Shapes;
using Laydown.Layout.Judging;
using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>Shapes of a job's pieces and stocks, made once, and as they lie.</summary>
public sealed class JobShapes
{
    private readonly Dictionary<string, Shape> pieces;
    private readonly Dictionary<string, Shape> stocks;
    private readonly HashSet<string> rectangles;
    private readonly Dictionary<(string Id, double Angle), Shape> turned = [];

    /// <summary>The shapes of a job.</summary>
    /// <exception cref="ArgumentException">A piece is neither rectangle nor contour, a contour is not sound, or an id comes twice.</exception>
    public JobShapes(LayoutJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        pieces = job.Pieces.ToDictionary(p => p.Id, Of, StringComparer.Ordinal);
        rectangles = [.. job.Pieces.Where(p => p.Contour is null).Select(p => p.Id)];
        stocks = job.Stocks.ToDictionary(
            s => s.Id, s => s.Contour is { } c ? Of(s.Id, c) : Shape.Of(new RectMm(0, 0, s.WidthMm, s.HeightMm)), StringComparer.Ordinal);
    }

    /// <summary>A piece as drawn.</summary>
    public Shape Piece(string id) => pieces[id];

    /// <summary>A stock, whole.</summary>
    public Shape Stock(string id) => stocks[id];

    /// <summary>A piece as it lies.</summary>
    public Shape Lying(JobSpot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        Shape at = Turned(spot.PieceId, spot.AngleDegrees);
        RectMm box = at.Bounds;
        return ShapeMoving.Moved(at, spot.XMm - box.XMm, spot.YMm - box.YMm);
    }

    /// <summary>A piece as it lies, for the judge: a rectangle at a quarter turn stays one.</summary>
    internal LyingPiece LyingPiece(JobSpot spot)
    {
        if (!rectangles.Contains(spot.PieceId) || spot.AngleDegrees % 90 != 0)
        {
            Shape shape = Lying(spot);
            return new(shape.Bounds, shape);
        }

        RectMm box = Turned(spot.PieceId, spot.AngleDegrees).Bounds;
        return new(new RectMm(spot.XMm, spot.YMm, box.WidthMm, box.HeightMm));
    }

    /// <summary>A piece turned about its origin, not moved.</summary>
    internal Shape Turned(string id, double degrees)
    {
        if (!turned.TryGetValue((id, degrees), out Shape? shape))
            turned[(id, degrees)] = shape = ShapeMoving.Turned(pieces[id], degrees);
        return shape;
    }

    private static Shape Of(JobPiece piece) => (piece.Contour, piece.WidthMm, piece.HeightMm) switch
    {
        ({ } contour, null, null) => Of(piece.Id, contour),
        (null, > 0, > 0) => Shape.Of(new RectMm(0, 0, piece.WidthMm.Value, piece.HeightMm.Value)),
        _ => throw new ArgumentException(Invariant($"Piece {piece.Id}: wanted a contour, or width and height over 0 mm.")),
    };

    private static Shape Of(string id, JobContour contour) => contour.OuterMm is { } outer
        ? Shape.Of(Ring(outer), [.. (contour.HolesMm ?? []).Select(Ring)])
        : throw new ArgumentException(Invariant($"{id}: wanted the corners of its contour."));

    private static Outline Ring(IReadOnlyList<double> xy) =>
        Outline.Of([.. Enumerable.Range(0, xy.Count / 2).Select(i => new PointMm(xy[2 * i], xy[(2 * i) + 1]))], closed: true);
}
