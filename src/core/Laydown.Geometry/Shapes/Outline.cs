using Laydown.Measures;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Valid;

namespace Laydown.Geometry.Shapes;

/// <summary>A line of straight pieces in mm: open, or closed to a ring.</summary>
public sealed class Outline
{
    private readonly LineString line;

    private Outline(IReadOnlyList<PointMm> points, bool closed, LineString line)
    {
        Points = points;
        IsClosed = closed;
        this.line = line;
    }

    /// <summary>Its corners in order; a closed one does not repeat its first. Corners on the same spot as the one before are left out.</summary>
    public IReadOnlyList<PointMm> Points { get; }

    /// <summary>Whether it returns to its first corner.</summary>
    public bool IsClosed { get; }

    /// <summary>Its length, mm; of a closed one with the last side.</summary>
    public double LengthMm => line.Length;

    /// <summary>The distance from its last corner to its first, mm: what is missing to close an open one.</summary>
    public double GapMm => Math.Sqrt(Math.Pow(Points[0].XMm - Points[^1].XMm, 2) + Math.Pow(Points[0].YMm - Points[^1].YMm, 2));

    /// <summary>The smallest upright rectangle around it.</summary>
    public RectMm Bounds => Planar.Rect(line.EnvelopeInternal);

    /// <summary>An outline through the given corners.</summary>
    /// <exception cref="ArgumentException">Fewer than two different corners, a closed one with fewer than three, or a coordinate that is no number.</exception>
    public static Outline Of(IReadOnlyList<PointMm> points, bool closed)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Any(p => !double.IsFinite(p.XMm) || !double.IsFinite(p.YMm)))
            throw new ArgumentException("Outline: found a coordinate that is no number.", nameof(points));

        List<PointMm> corners = [.. points.Where((p, i) => i == 0 || p != points[i - 1])];
        if (closed && corners.Count > 1 && corners[0] == corners[^1])
            corners.RemoveAt(corners.Count - 1);
        if (corners.Count < (closed ? 3 : 2))
            throw new ArgumentException(Invariant($"Outline: found {corners.Count} different corners; wanted at least {(closed ? 3 : 2)}."), nameof(points));

        IEnumerable<PointMm> way = closed ? corners.Append(corners[0]) : corners;
        return new(corners, closed, Planar.Factory.CreateLineString([.. way.Select(p => new Coordinate(p.XMm, p.YMm))]));
    }

    /// <summary>Where it meets itself other than at its ends, or null where it does not.</summary>
    public PointMm? FirstCrossing()
    {
        IsSimpleOp simple = new(line);
        return simple.IsSimple() ? null : new(simple.NonSimpleLocation.X, simple.NonSimpleLocation.Y);
    }

    /// <summary>Whether the whole of it lies within a rectangle, edges allowed, to <paramref name="slackMm"/>.</summary>
    public bool LiesIn(RectMm rect, double slackMm = 1e-6) => rect.Holds(Bounds, slackMm);

    internal Coordinate[] Ring() => IsClosed ? line.Coordinates : [.. line.Coordinates, line.Coordinates[0]];
}
