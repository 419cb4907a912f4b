using Laydown.Measures;

namespace Laydown.Formats.Pdf;

/// <summary>Builds the current path in mm of the page, curves flattened to a tolerance.</summary>
internal sealed class PathBuilder
{
    /// <summary>Farthest a flattened curve may lie from the true one, mm.</summary>
    public const double ToleranceMm = 0.1;

    private const int MostPieces = 256;
    private SubPath? open;
    private PointMm here;

    /// <summary>The parts drawn so far.</summary>
    public List<SubPath> Parts { get; } = [];

    /// <summary>Corners drawn so far.</summary>
    public long Count { get; private set; }

    public void MoveTo(PointMm to)
    {
        open = null;
        here = to;
    }

    public void LineTo(PointMm to) => Add(to);

    /// <summary>A cubic curve from here.</summary>
    public void CurveTo(PointMm one, PointMm two, PointMm to)
    {
        // Error of a chord is at most |B''| h² / 8, and |B''| is at most 6 times the larger second difference.
        var from = here;
        double bend = Math.Max(SecondDifference(from, one, two), SecondDifference(one, two, to));
        int pieces = (int)Math.Clamp(Math.Ceiling(Math.Sqrt(6 * bend / (8 * ToleranceMm))), 1, MostPieces);
        for (int piece = 1; piece <= pieces; piece++)
            Add(piece == pieces ? to : At(from, one, two, to, (double)piece / pieces));
    }

    /// <summary>A curve whose first control point is the current point.</summary>
    public void CurveFromHere(PointMm two, PointMm to) => CurveTo(here, two, to);

    public void Close()
    {
        if (open is null)
            return;
        open.Closed = true;
        here = open.Points[0];
        open = null;
    }

    public void Clear()
    {
        Parts.Clear();
        Count = 0;
        open = null;
    }

    /// <summary>The upright rectangle around all parts.</summary>
    public RectMm Bounds()
    {
        var points = Parts.SelectMany(p => p.Points);
        double left = points.Min(p => p.XMm), bottom = points.Min(p => p.YMm);
        return new(left, bottom, points.Max(p => p.XMm) - left, points.Max(p => p.YMm) - bottom);
    }

    private static double SecondDifference(PointMm a, PointMm b, PointMm c)
    {
        double x = a.XMm - (2 * b.XMm) + c.XMm;
        double y = a.YMm - (2 * b.YMm) + c.YMm;
        return Math.Sqrt((x * x) + (y * y));
    }

    private static PointMm At(PointMm a, PointMm b, PointMm c, PointMm d, double t)
    {
        double s = 1 - t;
        double wa = s * s * s, wb = 3 * s * s * t, wc = 3 * s * t * t, wd = t * t * t;
        return new((wa * a.XMm) + (wb * b.XMm) + (wc * c.XMm) + (wd * d.XMm), (wa * a.YMm) + (wb * b.YMm) + (wc * c.YMm) + (wd * d.YMm));
    }

    private void Add(PointMm to)
    {
        if (open is null)
        {
            open = new SubPath();
            open.Points.Add(here);
            Parts.Add(open);
        }

        open.Points.Add(to);
        here = to;
        Count++;
    }
}
