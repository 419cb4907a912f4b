using Laydown.Measures;
using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using NetTopologySuite.Operation.Distance;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Valid;

namespace Laydown.Geometry.Shapes;

/// <summary>An area in mm: one or more rings, each with any number of holes; may be empty.</summary>
public sealed class Shape
{
    private readonly NetTopologySuite.Geometries.Geometry area;

    // Made when first asked for; the same whoever makes it.
    private IndexedFacetDistance? facets;

    private Shape(NetTopologySuite.Geometries.Geometry area) => this.area = area;

    /// <summary>The shape as the library has it.</summary>
    internal NetTopologySuite.Geometries.Geometry Area => area;

    /// <summary>Its area without its holes, mm².</summary>
    public double AreaMm2 => area.Area;

    /// <summary>Whether nothing is left of it.</summary>
    public bool IsEmpty => area.IsEmpty;

    /// <summary>How many parts it has.</summary>
    public int Parts => Polygons().Count();

    /// <summary>The smallest upright rectangle around it; a point at the origin where it is empty.</summary>
    public RectMm Bounds => Planar.Rect(area.EnvelopeInternal);

    /// <summary>The area within an outline, less the holes; an open outline is closed by its shortest way.</summary>
    /// <exception cref="ArgumentException">An outline crosses itself, or a hole leaves the outline; the message says where.</exception>
    public static Shape Of(Outline outer, params IReadOnlyList<Outline> holes)
    {
        ArgumentNullException.ThrowIfNull(outer);
        ArgumentNullException.ThrowIfNull(holes);
        Polygon polygon = Planar.Factory.CreatePolygon(
            Planar.Factory.CreateLinearRing(outer.Ring()), [.. holes.Select(h => Planar.Factory.CreateLinearRing(h.Ring()))]);
        IsValidOp valid = new(polygon);
        return valid.IsValid
            ? new(polygon)
            : throw new ArgumentException(Invariant($"Shape: {valid.ValidationError.Message} at {valid.ValidationError.Coordinate.X:0.###}, {valid.ValidationError.Coordinate.Y:0.###} mm."), nameof(outer));
    }

    /// <summary>What the library made, known to be sound.</summary>
    internal static Shape Wrap(NetTopologySuite.Geometries.Geometry area) => new(area);

    /// <summary>The area of a rectangle.</summary>
    public static Shape Of(RectMm rect) => new(Planar.Factory.ToGeometry(new Envelope(rect.XMm, rect.RightMm, rect.YMm, rect.TopMm)));

    /// <summary>The shape grown by <paramref name="byMm"/> all round, shrunk where negative; outer corners are rounded.</summary>
    /// <param name="byMm">Distance, mm.</param>
    /// <param name="segmentsPerQuarter">Straight pieces for a quarter circle, at least 1; 16 errs by under 0.12 % of the distance, inward.</param>
    public Shape Offset(double byMm, int segmentsPerQuarter = 16) => new(area.Buffer(
        Measures.Bounds.Within(byMm, -1e6, 1e6),
        new BufferParameters(Measures.Bounds.Within(segmentsPerQuarter, 1, 256), EndCapStyle.Round, JoinStyle.Round, BufferParameters.DefaultMitreLimit)));

    /// <summary>What belongs to this shape or the other.</summary>
    public Shape Union(Shape other) => Overlaid(other, NetTopologySuite.Operation.Overlay.SpatialFunction.Union);

    /// <summary>What belongs to both.</summary>
    public Shape Common(Shape other) => Overlaid(other, NetTopologySuite.Operation.Overlay.SpatialFunction.Intersection);

    /// <summary>What belongs to this shape and not to the other.</summary>
    public Shape Less(Shape other) => Overlaid(other, NetTopologySuite.Operation.Overlay.SpatialFunction.Difference);

    /// <summary>Whether the other lies wholly within this one, edges allowed.</summary>
    public bool Holds(Shape other) => area.Covers(Inner(other));

    /// <summary>Least distance between the two, mm; 0 where they touch or overlap.</summary>
    public double DistanceMm(Shape other) => area.Distance(Inner(other));

    /// <summary>The points of the two where they are nearest, mm: first of this shape, then of the other; the same point where they touch or overlap.</summary>
    /// <exception cref="ArgumentException">One of them is empty.</exception>
    public (PointMm Here, PointMm There) Nearest(Shape other)
    {
        if (IsEmpty || Inner(other).IsEmpty)
            throw new ArgumentException("Nearest points: found an empty shape; wanted two with area.", nameof(other));

        // From edge to edge through a tree of edges; where one lies within the other and touches no edge of it, a corner belongs to both.
        facets ??= new(area);
        Coordinate[] points = facets.NearestPoints(other.area);
        Coordinate? common = points[0].Equals2D(points[1]) ? null : Within(other) ?? other.Within(this);
        PointMm here = new((common ?? points[0]).X, (common ?? points[0]).Y);
        return (here, common is null ? new(points[1].X, points[1].Y) : here);
    }

    /// <summary>Outer rings of all parts.</summary>
    public IReadOnlyList<Outline> OuterRings() => [.. Polygons().Select(p => Ring(p.ExteriorRing))];

    /// <summary>Holes of all parts.</summary>
    public IReadOnlyList<Outline> Holes() => [.. Polygons().SelectMany(p => p.InteriorRings).Select(Ring)];

    // A corner of the other that lies within this one; null where none does.
    private Coordinate? Within(Shape other) => other.Polygons().Select(p => p.Coordinate)
        .FirstOrDefault(c => area.EnvelopeInternal.Contains(c) && SimplePointInAreaLocator.Locate(c, area) == Location.Interior);

    private static Outline Ring(LineString ring) => Outline.Of([.. ring.Coordinates.Select(c => new PointMm(c.X, c.Y))], closed: true);

    private static NetTopologySuite.Geometries.Geometry Inner(Shape other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return other.area;
    }

    private IEnumerable<Polygon> Polygons() =>
        Enumerable.Range(0, area.NumGeometries).Select(area.GetGeometryN).OfType<Polygon>().Where(p => !p.IsEmpty);

    private Shape Overlaid(Shape other, NetTopologySuite.Operation.Overlay.SpatialFunction how) =>
        new(OverlayNGRobust.Overlay(area, Inner(other), how));
}
