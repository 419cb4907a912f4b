using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>The mark of the Saltmarsh Observatory (invented): a dome over the tide, with one star, in a ring.</summary>
internal static class Mark
{
    /// <summary>A star of four points.</summary>
    public static Outline Star(double x, double y, double r)
    {
        double k = 0.14 * r;
        return new Outline().M(x, y - r).C(x + (k * 0.4), y - k, x + k, y - (k * 0.4), x + r, y).C(x + k, y + (k * 0.4), x + (k * 0.4), y + k, x, y + r)
            .C(x - (k * 0.4), y + k, x - k, y + (k * 0.4), x - r, y).C(x - k, y - (k * 0.4), x - (k * 0.4), y - k, x, y - r).Z();
    }

    /// <summary>Draws the mark around a centre.</summary>
    public static void Draw(Picture picture, double cx, double cy, double radius, SKColor colour)
    {
        Affine place = Affine.Place(cx, cy, radius);
        picture.Fill(Outline.Circle(0, 0, 1).And(Outline.Ellipse(0, 0, 0.93, -0.93)).At(place), colour);
        const double r = 0.44;
        const double k = 0.5523 * r;

        // The dome in two halves, with the slit between.
        picture.Fill(new Outline().M(-r, 0.16).C(-r, 0.16 - k, -k, 0.16 - r, -0.02, 0.16 - r).L(0.14, 0.16).Z().At(place), colour);
        picture.Fill(new Outline().M(0.13, 0.16 - r + 0.02).C(0.34, 0.16 - (r * 0.86), r, 0.16 - k, r, 0.16).L(0.26, 0.16).Z().At(place), colour);
        foreach ((double at, double half) in ((double, double)[])[(0.33, 0.66), (0.50, 0.52), (0.67, 0.34)])
            picture.Fill(Wave(at, half).At(place), colour);
        picture.Fill(Star(0.36, -0.52, 0.20).At(place), colour);
        picture.Fill(Star(-0.30, -0.50, 0.09).At(place), colour);
    }

    /// <summary>Mark and name beside each other; gives the width.</summary>
    public static double WithName(Picture picture, double x, double y, double height, SKColor colour)
    {
        double r = height / 2;
        Draw(picture, x + r, y + r, r, colour);
        double size = height * 0.36;
        picture.Write("SALTMARSH", Face.Black, size, x + height + (0.22 * height), y + (0.47 * height), colour, size * 0.14);
        picture.Write("OBSERVATORY", Face.Regular, size * 0.80, x + height + (0.22 * height), y + (0.84 * height), colour, size * 0.155);
        return (height * 1.22) + Type.Width("SALTMARSH", Face.Black, size, size * 0.14);
    }

    private static Outline Wave(double at, double half)
    {
        const double thick = 0.045;
        List<(double, double)> upper = [];
        List<(double, double)> lower = [];
        for (int i = 0; i <= 16; i++)
        {
            double t = (i / 8.0) - 1;
            double swing = 0.035 * Math.Sin(t * half * 15);
            upper.Add((t * half, at + swing - (thick / 2)));
            lower.Add((t * half, at + swing + (thick / 2)));
        }

        return Outline.Ribbon(upper, lower);
    }
}
