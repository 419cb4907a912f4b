using Laydown.Geometry.Outlines;
using Laydown.Geometry.Shapes;
using Laydown.Layout.Judging;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>The contours pieces are cut to, at all quarter turns, for layouts whose pieces may reach into each other's rectangles.</summary>
public sealed class HandContours
{
    private readonly Dictionary<(string Id, int Angle), Shape> turned = [];
    private readonly Dictionary<string, PieceOutline> outlines;

    /// <summary>Contours of pieces; a piece without one is cut to its printed rectangle.</summary>
    /// <param name="pieces">All pieces of the layout.</param>
    /// <param name="outlines">Contours, each piece at most once.</param>
    /// <exception cref="ArgumentException">A contour crosses itself, or a piece has two.</exception>
    public HandContours(IReadOnlyList<Piece> pieces, IReadOnlyList<PieceOutline> outlines)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(outlines);
        Dictionary<string, PieceOutline> given = outlines.ToDictionary(o => o.PieceId, StringComparer.Ordinal);
        this.outlines = pieces.ToDictionary(p => p.Id, p => given.GetValueOrDefault(p.Id) ?? Rectangle(p), StringComparer.Ordinal);
        foreach (Piece piece in pieces)
            for (int angle = 0; angle < 360; angle += 90)
                turned[(piece.Id, angle)] = Turned(this.outlines[piece.Id], piece.Printed, angle);
    }

    /// <summary>The contour of a piece, mm from the lower left corner of its printed rectangle as it lies unturned.</summary>
    /// <exception cref="KeyNotFoundException">There is no such piece.</exception>
    public PieceOutline Of(string pieceId) => outlines[pieceId];

    /// <summary>A piece as it lies.</summary>
    /// <exception cref="KeyNotFoundException">There is no such piece.</exception>
    public LyingPiece Lying(HandSpot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        Shape shape = ShapeMoving.Moved(turned[(spot.PieceId, spot.Angle)], spot.XMm, spot.YMm);
        return new(shape.Bounds, shape);
    }

    /// <summary>A piece as it is drawn, mm from the lower left corner of its printed rectangle.</summary>
    internal Shape Drawn(string pieceId) => turned[(pieceId, 0)];

    private static PieceOutline Rectangle(Piece piece) =>
        new(piece.Id, [new(0, 0), new(piece.Printed.WidthMm, 0), new(piece.Printed.WidthMm, piece.Printed.HeightMm), new(0, piece.Printed.HeightMm)], []);

    private static Shape Turned(PieceOutline outline, SizeMm printed, int angle)
    {
        SizeMm lying = angle % 180 == 0 ? printed : printed.Turned();
        Placement at = new(outline.PieceId, 1, new(0, 0, lying.WidthMm, lying.HeightMm), angle % 180 != 0, null, angle);
        IReadOnlyList<IReadOnlyList<PointMm>> rings = outline.On(at);
        return Shape.Of(Outline.Of(rings[0], closed: true), [.. rings.Skip(1).Select(r => Outline.Of(r, closed: true))]);
    }
}
