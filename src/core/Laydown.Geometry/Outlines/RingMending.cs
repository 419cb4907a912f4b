using Laydown.Geometry.Shapes;
using Laydown.Measures;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Polygonize;
using NetTopologySuite.Operation.Union;
using NetTopologySuite.Operation.Valid;

namespace Laydown.Geometry.Outlines;

/// <summary>Makes one closed line sound: a ring that meets itself nowhere and holds some area.</summary>
internal static class RingMending
{
    /// <summary>A loop of less than this share of the ring is a slip of the drawing and is swallowed; a larger one is refused.</summary>
    private const double SlipShare = 0.001;

    /// <summary>The ring as a polygon without holes, or null where it was refused.</summary>
    internal static Polygon? Mend(RawContour contour, OutlineRules rules, OutlineNotes notes)
    {
        List<Coordinate> ring = Corners(contour, notes);
        if (ring.Count < 4)
        {
            notes.Refuse(contour.Field, Invariant($"{Math.Max(0, ring.Count - 1)} different corners"), "a ring of at least three corners that holds some area");
            return null;
        }

        Polygon polygon = Planar.Factory.CreatePolygon([.. ring]);
        if (new IsValidOp(polygon) is { IsValid: false } flaw)
        {
            Polygon? mended = Untangled(contour.Field, polygon, flaw.ValidationError.Coordinate, rules, notes);
            if (mended is null)
                return null;
            polygon = mended;
        }

        if (polygon.Area >= rules.LeastAreaMm2)
            return polygon;
        notes.Refuse(contour.Field, Invariant($"an area of {polygon.Area:0.####} mm²"), Invariant($"at least {rules.LeastAreaMm2:0.####} mm²"));
        return null;
    }

    private static List<Coordinate> Corners(RawContour contour, OutlineNotes notes)
    {
        List<Coordinate> ring = [];
        foreach (PointMm p in contour.Points)
            if (ring.Count == 0 || Math.Abs(ring[^1].X - p.XMm) > 1e-6 || Math.Abs(ring[^1].Y - p.YMm) > 1e-6)
                ring.Add(new(p.XMm, p.YMm));
        int doubled = contour.Points.Count - ring.Count;
        if (ring.Count > 1 && Math.Abs(ring[^1].X - ring[0].X) <= 1e-6 && Math.Abs(ring[^1].Y - ring[0].Y) <= 1e-6)
            ring.RemoveAt(ring.Count - 1);
        if (doubled > 0)
        {
            notes.Mended(
                "outline-double-points", Severity.Note, contour.Points[0], Invariant($"{contour.Field}: corners lay on the corner before them."),
                Invariant($"{doubled} corners"), "each corner once", "left out");
        }

        if (ring.Count > 0)
            ring.Add(ring[0].Copy());
        return ring;
    }

    // All that the line encloses is kept, so that nothing is laid out on what it may cut.
    private static Polygon? Untangled(string field, Polygon tangled, Coordinate where, OutlineRules rules, OutlineNotes notes)
    {
        Polygonizer faces = new();
        faces.Add(UnaryUnionOp.Union(tangled.ExteriorRing));
        NetTopologySuite.Geometries.Geometry all = UnaryUnionOp.Union(faces.GetPolygons()) ?? Planar.Factory.CreatePolygon();
        List<Polygon> parts = [.. Enumerable.Range(0, all.NumGeometries).Select(all.GetGeometryN).OfType<Polygon>().OrderByDescending(p => p.Area)];
        string place = Invariant($"{where.X:0.###}, {where.Y:0.###} mm");
        if (parts.Count == 0 || parts[0].Area < rules.LeastAreaMm2)
        {
            notes.Refuse(field, Invariant($"an area of {(parts.Count == 0 ? 0 : parts[0].Area):0.####} mm²"), Invariant($"at least {rules.LeastAreaMm2:0.####} mm²"));
            return null;
        }

        if (parts.Skip(1).FirstOrDefault(p => p.Area > SlipShare * parts[0].Area) is { } loop)
        {
            notes.Refuse(
                field, Invariant($"a line that crosses itself at {place} and encloses {parts.Count} areas, the second of {loop.Area:0.##} mm²"),
                "a ring that crosses itself nowhere");
            return null;
        }

        Polygon outer = Planar.Factory.CreatePolygon((LinearRing)parts[0].ExteriorRing);
        notes.Mended(
            "outline-crosses-itself", Severity.Warn, new(where.X, where.Y), Invariant($"{field}: the line meets itself at {place}."),
            Invariant($"area {outer.Area:0.###} mm² enclosed"), "a ring that meets itself nowhere", "all that it encloses is kept as one ring");
        return outer;
    }
}
