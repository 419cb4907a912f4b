using NetTopologySuite.Geometries;

namespace Laydown.Instances.Polygons;

/// <summary>What a layout of shapes has to keep.</summary>
/// <param name="Boards">Where shapes may lie, board by board: for a strip one rectangle of the width and the length claimed.</param>
/// <param name="Gap">Least distance of two shapes.</param>
/// <param name="Margin">Least distance from the edges and holes of a board.</param>
/// <param name="Slack">Length by which distances may fall short: what single numbers lose on the way.</param>
/// <param name="KeepOuts">For each board, areas that shapes must keep the gap from; null for none.</param>
public sealed record PolygonAsk(
    IReadOnlyList<Polygon> Boards, double Gap, double Margin, double Slack, IReadOnlyList<IReadOnlyList<Polygon>>? KeepOuts = null)
{
    /// <summary>A rectangle from the origin.</summary>
    public static Polygon Rectangle(double width, double height) =>
        (Polygon)new GeometryFactory().ToGeometry(new Envelope(0, width, 0, height));
}
