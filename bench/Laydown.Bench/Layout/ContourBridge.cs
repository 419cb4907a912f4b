using Laydown.Geometry.Shapes;
using Laydown.Instances.Polygons;
using Laydown.Layout.Contours;
using Laydown.Measures;

namespace Laydown.Bench.Layout;

/// <summary>Published shapes as pieces of the product, and its layouts back for the judge.</summary>
internal static class ContourBridge
{
    /// <summary>Share of the width by which a layout may fall short: a thousandth of a millimetre on a board of one metre, as users are told.</summary>
    private const double SlackShare = 1e-6;

    /// <summary>The items as pieces, named by their index.</summary>
    public static IReadOnlyList<ContourPiece> Pieces(PolygonInstance instance) =>
    [
        .. instance.Items.Select((item, i) => new ContourPiece(
            Invariant($"{i}"), Shape.Of(Outline.Of([.. item.Shape.ExteriorRing.Coordinates.Select(c => new PointMm(c.X, c.Y))], closed: true)), item.Copies,
            item.Degrees is null ? ContourAngles.Free : ContourAngles.Of(item.Degrees))),
    ];

    /// <summary>What the judge says of a layout.</summary>
    public static IReadOnlyList<string> Faults(PolygonInstance instance, ContourResult result)
    {
        double width = instance.Height > 0 ? instance.Width : result.LengthMm, height = instance.Height > 0 ? instance.Height : instance.Width;
        IReadOnlyList<PlacedPolygon> placed =
        [
            .. result.Sheets.SelectMany((sheet, board) => sheet.Spots.Select(s => new PlacedPolygon(
                int.Parse(s.PieceId, System.Globalization.CultureInfo.InvariantCulture), board, s.XMm, s.YMm, s.AngleDegrees))),
        ];
        return PolygonChecker.Faults(instance, placed, new([.. result.Sheets.Select(_ => PolygonAsk.Rectangle(width, height))], 0, 0, SlackShare * instance.Width));
    }
}
