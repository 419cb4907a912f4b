using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>A path of straight lines and cubic curves; y downward, in mm of the picture or in units of a motif.</summary>
internal sealed class Outline
{
    private readonly List<(char Verb, double[] At)> steps = [];

    /// <summary>Its steps: M, L, C and Z with their coordinates.</summary>
    public IReadOnlyList<(char Verb, double[] At)> Steps => steps;

    public static Outline Rect(double x, double y, double width, double height) =>
        new Outline().M(x, y).L(x + width, y).L(x + width, y + height).L(x, y + height).Z();

    public static Outline Circle(double x, double y, double radius) => Ellipse(x, y, radius, radius);

    public static Outline Ellipse(double x, double y, double rx, double ry)
    {
        // Four arcs; 0.5523 is the handle length of a quarter circle.
        double kx = 0.5523 * rx;
        double ky = 0.5523 * ry;
        return new Outline().M(x + rx, y).C(x + rx, y + ky, x + kx, y + ry, x, y + ry).C(x - kx, y + ry, x - rx, y + ky, x - rx, y)
            .C(x - rx, y - ky, x - kx, y - ry, x, y - ry).C(x + kx, y - ry, x + rx, y - ky, x + rx, y).Z();
    }

    public static Outline RoundRect(double x, double y, double w, double h, double r)
    {
        double k = r * (1 - 0.5523);
        return new Outline().M(x + r, y).L(x + w - r, y).C(x + w - k, y, x + w, y + k, x + w, y + r).L(x + w, y + h - r)
            .C(x + w, y + h - k, x + w - k, y + h, x + w - r, y + h).L(x + r, y + h).C(x + k, y + h, x, y + h - k, x, y + h - r)
            .L(x, y + r).C(x, y + k, x + k, y, x + r, y).Z();
    }

    /// <summary>A smooth line through all points (Catmull–Rom), open.</summary>
    public static Outline Through(IReadOnlyList<(double X, double Y)> points) => new Outline().M(points[0].X, points[0].Y).Along(points);

    /// <summary>A ribbon: along one edge, back along the other.</summary>
    public static Outline Ribbon(IReadOnlyList<(double X, double Y)> left, IReadOnlyList<(double X, double Y)> right)
    {
        List<(double, double)> back = [.. right.Reverse()];
        return Through(left).L(back[0].Item1, back[0].Item2).Along(back).Z();
    }

    /// <summary>The outlines of a Skia path.</summary>
    public static Outline Of(SKPath path)
    {
        Outline outline = new();
        using SKPath.RawIterator verbs = path.CreateRawIterator();
        SKPoint[] p = new SKPoint[4];
        for (SKPathVerb verb = verbs.Next(p); verb != SKPathVerb.Done; verb = verbs.Next(p))
        {
            switch (verb)
            {
                case SKPathVerb.Move: outline.M(p[0].X, p[0].Y); break;
                case SKPathVerb.Line: outline.L(p[1].X, p[1].Y); break;
                case SKPathVerb.Quad: outline.Q(p[0].X, p[0].Y, p[1].X, p[1].Y, p[2].X, p[2].Y); break;
                case SKPathVerb.Cubic: outline.C(p[1].X, p[1].Y, p[2].X, p[2].Y, p[3].X, p[3].Y); break;
                case SKPathVerb.Close: outline.Z(); break;
                case SKPathVerb.Conic:
                    SKPoint[] quads = SKPath.ConvertConicToQuads(p[0], p[1], p[2], verbs.ConicWeight(), 2);
                    for (int i = 0; i + 2 < quads.Length; i += 2)
                        outline.Q(quads[i].X, quads[i].Y, quads[i + 1].X, quads[i + 1].Y, quads[i + 2].X, quads[i + 2].Y);
                    break;
            }
        }

        return outline;
    }

    public Outline M(double x, double y) => Add('M', x, y);

    public Outline L(double x, double y) => Add('L', x, y);

    public Outline C(double x1, double y1, double x2, double y2, double x, double y) => Add('C', x1, y1, x2, y2, x, y);

    public Outline Z() => Add('Z');

    /// <summary>Several outlines as one.</summary>
    public Outline And(Outline other)
    {
        steps.AddRange(other.steps);
        return this;
    }

    /// <summary>The same outline elsewhere.</summary>
    public Outline At(Affine place)
    {
        Outline moved = new();
        foreach ((char verb, double[] at) in steps)
        {
            double[] to = new double[at.Length];
            for (int i = 0; i < at.Length; i += 2)
                (to[i], to[i + 1]) = place.Of(at[i], at[i + 1]);
            moved.steps.Add((verb, to));
        }

        return moved;
    }

    /// <summary>As a Skia path.</summary>
    public SKPath ToSkia()
    {
        using SKPathBuilder path = new();
        foreach ((char verb, double[] a) in steps)
        {
            switch (verb)
            {
                case 'M': path.MoveTo((float)a[0], (float)a[1]); break;
                case 'L': path.LineTo((float)a[0], (float)a[1]); break;
                case 'C': path.CubicTo((float)a[0], (float)a[1], (float)a[2], (float)a[3], (float)a[4], (float)a[5]); break;
                default: path.Close(); break;
            }
        }

        return path.Detach();
    }

    private Outline Q(double x0, double y0, double x1, double y1, double x, double y) =>
        C(x0 + (2 * (x1 - x0) / 3), y0 + (2 * (y1 - y0) / 3), x + (2 * (x1 - x) / 3), y + (2 * (y1 - y) / 3), x, y);

    private Outline Along(IReadOnlyList<(double X, double Y)> p)
    {
        for (int i = 0; i + 1 < p.Count; i++)
        {
            (double x0, double y0) = p[Math.Max(0, i - 1)];
            (double x3, double y3) = p[Math.Min(p.Count - 1, i + 2)];
            C(p[i].X + ((p[i + 1].X - x0) / 6), p[i].Y + ((p[i + 1].Y - y0) / 6),
                p[i + 1].X - ((x3 - p[i].X) / 6), p[i + 1].Y - ((y3 - p[i].Y) / 6), p[i + 1].X, p[i + 1].Y);
        }

        return this;
    }

    private Outline Add(char verb, params double[] at)
    {
        steps.Add((verb, at));
        return this;
    }
}
