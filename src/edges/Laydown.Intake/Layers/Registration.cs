using Laydown.Measures;
using Laydown.Shop.Layers;

namespace Laydown.Intake.Layers;

/// <summary>How the night picture is laid on the piece by places named in both: x' = A x + B y + X, y' = C x + D y + Y.</summary>
/// <remarks>From pixels of the night picture to pixels of the piece, both counted from the upper left corner of the first pixel.</remarks>
internal sealed record Registration(double A, double B, double C, double D, double X, double Y)
{
    private const double LeastScale = 0.01, MostScale = 100;

    /// <summary>How many pixels of the piece a pixel of the picture becomes in one direction, on the mean.</summary>
    public double Scale => Math.Sqrt(Math.Abs((A * D) - (B * C)));

    /// <summary>The same for a picture made <paramref name="across"/> and <paramref name="down"/> times as large.</summary>
    public Registration For(double across, double down) => new(A / across, B / down, C / across, D / down, X, Y);

    /// <summary>Share of the piece that the picture covers, 0 to 1, from a grid of 101 × 101 places.</summary>
    public double Covered(int width, int height, PairGrid grid)
    {
        const int Steps = 100;
        double determinant = (A * D) - (B * C);
        int within = 0;
        for (int i = 0; i <= Steps; i++)
        {
            for (int j = 0; j <= Steps; j++)
            {
                double x = (grid.Width * (double)i / Steps) - X, y = (grid.Height * (double)j / Steps) - Y;
                double u = ((D * x) - (B * y)) / determinant, v = ((A * y) - (C * x)) / determinant;
                within += u >= -0.5 && v >= -0.5 && u <= width + 0.5 && v <= height + 0.5 ? 1 : 0;
            }
        }

        return within / (double)((Steps + 1) * (Steps + 1));
    }

    /// <summary>Moved, turned and scaled by two places, sheared as well by three; or why the places fit no picture.</summary>
    /// <param name="points">Two or three places.</param>
    /// <param name="width">Width of the night picture, pixels.</param>
    /// <param name="height">Its height, square pixels.</param>
    /// <param name="grid">The piece.</param>
    /// <param name="finished">Finished size, mm.</param>
    /// <param name="file">File for faults.</param>
    public static Reading<Registration> Of(
        IReadOnlyList<PairPoint> points, int width, int height, PairGrid grid, SizeMm finished, string file)
    {
        if (points.Count is not (2 or 3))
            return Refused(file, Invariant($"{points.Count} places"), "none, 2 or 3 places named in both pictures");
        if (points.Any(p => !double.IsFinite(p.NightX + p.NightY + p.DayX + p.DayY)))
            return Refused(file, "a place that is no number", "numbers");
        (double X, double Y)[] from = [.. points.Select(p => Share(p, finished, p.NightX, p.NightY)).Select(s => (s.X * width, s.Y * height))];
        (double X, double Y)[] to = [.. points.Select(p => Share(p, finished, p.DayX, p.DayY))
            .Select(s => (grid.Left + (s.X * grid.FinishedWidth), grid.Top + (s.Y * grid.FinishedHeight)))];
        return (points.Count == 2 ? Similar(from, to) : Affine(from, to)) is { } found
            ? Checked(found, file)
            : Refused(file, "places that lie on one spot or one line", points.Count == 2 ? "two places apart from each other" : "three places that span a triangle");
    }

    private static Reading<Registration> Checked(Registration found, string file)
    {
        double determinant = (found.A * found.D) - (found.B * found.C);
        if (determinant < 0)
            return Refused(file, "places that turn the night picture over", "the same places in the same order in both pictures");
        return found.Scale is >= LeastScale and <= MostScale
            ? Reading.Of(found)
            : Refused(file, Invariant($"places that scale the night picture by {found.Scale:0.####}"), Invariant($"a scale of {LeastScale} to {MostScale}"));
    }

    private static (double X, double Y) Share(PairPoint point, SizeMm finished, double x, double y) => point.Unit == PairUnit.Percent
        ? (x / 100, y / 100)
        : (x / finished.WidthMm, y / finished.HeightMm);

    // Two places: one complex factor and one shift.
    private static Registration? Similar((double X, double Y)[] from, (double X, double Y)[] to)
    {
        double dx = from[1].X - from[0].X, dy = from[1].Y - from[0].Y, ex = to[1].X - to[0].X, ey = to[1].Y - to[0].Y;
        double square = (dx * dx) + (dy * dy);
        if (!(square > 1e-6) || !((ex * ex) + (ey * ey) > 1e-6))
            return null;
        double a = ((ex * dx) + (ey * dy)) / square, c = ((ey * dx) - (ex * dy)) / square;
        return new(a, -c, c, a, to[0].X - (a * from[0].X) + (c * from[0].Y), to[0].Y - (c * from[0].X) - (a * from[0].Y));
    }

    private static Registration? Affine((double X, double Y)[] from, (double X, double Y)[] to)
    {
        double px = from[1].X - from[0].X, py = from[1].Y - from[0].Y, qx = from[2].X - from[0].X, qy = from[2].Y - from[0].Y;
        double area = (px * qy) - (qx * py);
        double longest = Math.Max((px * px) + (py * py), (qx * qx) + (qy * qy));
        double rx = to[1].X - to[0].X, ry = to[1].Y - to[0].Y, sx = to[2].X - to[0].X, sy = to[2].Y - to[0].Y;
        double onto = Math.Abs((rx * sy) - (sx * ry)), spread = Math.Max((rx * rx) + (ry * ry), (sx * sx) + (sy * sy));

        // A triangle flatter than a hundredth of its longest side says nothing about one direction.
        if (Math.Abs(area) <= 0.01 * longest || onto <= 0.01 * spread)
            return null;
        double a = ((rx * qy) - (sx * py)) / area, b = ((sx * px) - (rx * qx)) / area;
        double c = ((ry * qy) - (sy * py)) / area, d = ((sy * px) - (ry * qx)) / area;
        return new(a, b, c, d, to[0].X - (a * from[0].X) - (b * from[0].Y), to[0].Y - (c * from[0].X) - (d * from[0].Y));
    }

    private static Reading<Registration> Refused(string file, string found, string wanted) =>
        Reading.Refused<Registration>(new InputFault(file, null, "register", found, wanted));
}
