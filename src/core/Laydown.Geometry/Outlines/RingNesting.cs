using Laydown.Geometry.Shapes;
using Laydown.Measures;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Index.Strtree;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Union;

namespace Laydown.Geometry.Outlines;

/// <summary>Tells outer rings from holes.</summary>
internal static class RingNesting
{
    /// <summary>Every ring within an even number of others is a shape, every other a hole of the ring around it. Rings that cross are refused.</summary>
    internal static IReadOnlyList<MendedShape> Shapes(IReadOnlyList<MendedRing> rings, OutlineNotes notes)
    {
        int[] order = [.. Enumerable.Range(0, rings.Count).OrderByDescending(i => rings[i].Ring.Area).ThenBy(i => i)];
        STRtree<int> index = new();
        foreach (int i in order)
            index.Insert(rings[i].Ring.EnvelopeInternal, i);

        int[] depth = new int[rings.Count], around = new int[rings.Count];
        bool[] twice = new bool[rings.Count];
        IPreparedGeometry?[] prepared = new IPreparedGeometry?[rings.Count];
        foreach (int i in order)
        {
            around[i] = -1;
            foreach (int other in index.Query(rings[i].Ring.EnvelopeInternal).Where(o => IsLarger(rings, o, i) && !twice[o]))
            {
                prepared[other] ??= PreparedGeometryFactory.Prepare(rings[other].Ring);
                Relate(rings, other, i, prepared[other]!, depth, around, twice, notes);
            }
        }

        return Assembled(rings, depth, around, twice);
    }

    /// <summary>A ring with holes known to be its own, or null where one crosses it.</summary>
    internal static Shape? Pierced(MendedRing outer, IReadOnlyList<MendedRing> holes, OutlineNotes notes)
    {
        List<Polygon> within = [];
        IPreparedGeometry prepared = PreparedGeometryFactory.Prepare(outer.Ring);
        foreach (MendedRing hole in holes)
        {
            if (prepared.ContainsProperly(hole.Ring))
                within.Add(hole.Ring);
            else if (prepared.Disjoint(hole.Ring))
                notes.Mended(
                    "outline-hole-outside", Severity.Warn, Place(hole.Ring), Invariant($"{hole.Field}: the hole lies outside its shape."),
                    Invariant($"{hole.Ring.Area:0.##} mm² outside"), "holes within the outer ring", "left out");
            else
                notes.Refuse(hole.Field, "a hole that crosses or touches the outer ring", "a hole wholly within it");
        }

        if (notes.Faults.Count > 0)
            return null;
        NetTopologySuite.Geometries.Geometry? all = within.Count == 0 ? null : UnaryUnionOp.Union(within);
        if (all is not null && all.NumGeometries < within.Count)
        {
            notes.Mended(
                "outline-holes-overlap", Severity.Warn, Place(within[0]), Invariant($"{outer.Field}: holes overlap."),
                Invariant($"{within.Count} holes"), "holes apart from each other", Invariant($"joined to {all.NumGeometries}"));
        }

        return Shape.Wrap(all is null ? outer.Ring : OverlayNGRobust.Overlay(outer.Ring, all, NetTopologySuite.Operation.Overlay.SpatialFunction.Difference));
    }

    private static bool IsLarger(IReadOnlyList<MendedRing> rings, int one, int other) =>
        rings[one].Ring.Area > rings[other].Ring.Area || (rings[one].Ring.Area == rings[other].Ring.Area && one < other);

    private static void Relate(
        IReadOnlyList<MendedRing> rings, int larger, int ring, IPreparedGeometry prepared, int[] depth, int[] around, bool[] twice, OutlineNotes notes)
    {
        Polygon inner = rings[ring].Ring;
        if (prepared.ContainsProperly(inner))
        {
            depth[ring]++;
            if (around[ring] < 0 || rings[larger].Ring.Area < rings[around[ring]].Ring.Area)
                around[ring] = larger;
        }
        else if (prepared.Disjoint(inner))
        {
            return;
        }
        else if (prepared.Geometry.EqualsTopologically(inner))
        {
            twice[ring] = true;
            notes.Mended(
                "outline-twice", Severity.Warn, Place(inner), Invariant($"{rings[ring].Field}: the same ring as {rings[larger].Field}."),
                Invariant($"{inner.Area:0.##} mm²"), "each ring once", "left out");
        }
        else if (!prepared.Touches(inner))
        {
            notes.Refuse(rings[ring].Field, Invariant($"a ring that crosses {rings[larger].Field}"), "rings that lie apart or within each other");
        }
    }

    private static IReadOnlyList<MendedShape> Assembled(IReadOnlyList<MendedRing> rings, int[] depth, int[] around, bool[] twice)
    {
        ILookup<int, LinearRing> holes = Enumerable.Range(0, rings.Count).Where(i => depth[i] % 2 == 1 && !twice[i])
            .ToLookup(i => around[i], i => (LinearRing)rings[i].Ring.ExteriorRing);
        return
        [
            .. Enumerable.Range(0, rings.Count).Where(i => depth[i] % 2 == 0 && !twice[i]).Select(i => new MendedShape(
                rings[i].Field, Shape.Wrap(Planar.Factory.CreatePolygon((LinearRing)rings[i].Ring.ExteriorRing, [.. holes[i]])))),
        ];
    }

    private static PointMm Place(Polygon ring) => new(ring.EnvelopeInternal.MinX, ring.EnvelopeInternal.MinY);
}
