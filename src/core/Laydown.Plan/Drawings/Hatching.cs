using System.Text;

namespace Laydown.Plan.Drawings;

/// <summary>Lines and dots that fill a rectangle, as SVG path data.</summary>
internal static class Hatching
{
    /// <summary>Parallel lines <paramref name="step"/> apart, at 0°, 45°, 90° or 135°, anchored to the page so that neighbours line up.</summary>
    internal static string Lines(double x, double y, double w, double h, int degrees, double step)
    {
        StringBuilder data = new();
        double first, last;
        switch (degrees)
        {
            case 0:
                for (double at = First(y, step); at < y + h; at += step)
                    Add(data, x, at, x + w, at);
                break;
            case 90:
                for (double at = First(x, step); at < x + w; at += step)
                    Add(data, at, y, at, y + h);
                break;
            default:
                // Slanting lines: x + y = c rising, x − y = c falling; cut to the rectangle.
                double slope = step * Math.Sqrt(2);
                (first, last) = degrees == 45 ? (x + y, x + w + y + h) : (x - y - h, x + w - y);
                for (double c = First(first, slope); c < last; c += slope)
                    Slanting(data, x, y, w, h, c, degrees == 45);
                break;
        }

        return data.ToString();
    }

    /// <summary>Dots as lines of no length; every other row is shifted by half a step.</summary>
    internal static string Dots(double x, double y, double w, double h, double step)
    {
        StringBuilder data = new();
        double inset = step * 0.3;
        int row = 0;
        for (double at = First(y + inset, step); at < y + h - (inset / 2); at += step, row++)
        {
            bool shifted = (long)Math.Round(at / step) % 2 != 0;
            for (double across = First(x + inset, step) + (shifted ? step / 2 : 0); across < x + w - (inset / 2); across += step)
                data.Append(Invariant($"M{across:0.##} {at:0.##}h0"));
        }

        return data.ToString();
    }

    private static void Slanting(StringBuilder data, double x, double y, double w, double h, double c, bool rising)
    {
        // Along the line, x goes from left to right; y follows.
        double from = rising ? Math.Max(x, c - y - h) : Math.Max(x, c + y);
        double to = rising ? Math.Min(x + w, c - y) : Math.Min(x + w, c + y + h);
        if (to - from > 0.2)
            Add(data, from, rising ? c - from : from - c, to, rising ? c - to : to - c);
    }

    private static double First(double from, double step) => (Math.Floor(from / step) + 1) * step;

    private static void Add(StringBuilder data, double x1, double y1, double x2, double y2) =>
        data.Append(Invariant($"M{x1:0.##} {y1:0.##}L{x2:0.##} {y2:0.##}"));
}
