using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>What of the night picture is seen by day.</summary>
internal sealed class GhostView
{
    private GhostView(DifferenceSummary leak, float[] map, double correlation) => (Leak, Map, Correlation) = (leak, map, correlation);

    /// <summary>How far the layer behind moves the day view with nothing done against it.</summary>
    internal DifferenceSummary Leak { get; }

    /// <summary>What is left of it, weighted by the eye's sensitivity.</summary>
    internal float[] Map { get; }

    /// <summary>Correlation of what is left with the night picture.</summary>
    internal double Correlation { get; }

    internal static GhostView Of(PanelPlan plan, PairPicture small, JudgedPixels pixels, double pixelsPerMm, CancellationToken cancellation)
    {
        // The same day picture over the night picture's local mean: what differs is the night picture shining through.
        float[] even = EvenNight(plan, small, pixelsPerMm), leak = new float[pixels.Count];
        float[][] moved = [new float[pixels.Count], new float[pixels.Count], new float[pixels.Count]];
        Parallel.For(0, small.Height, new ParallelOptions { CancellationToken = cancellation }, row =>
        {
            double[] inks = new double[plan.Model.InkCount];
            for (int pixel = row * small.Width; pixel < (row + 1) * small.Width; pixel++)
            {
                Lab calm = Calm(plan, small, even, pixel, inks);
                ReadOnlySpan<float> seen = pixels.Seen.AsSpan(6 * pixel, 6);
                (moved[0][pixel], moved[1][pixel], moved[2][pixel]) = ((float)(seen[0] - calm.L), (float)(seen[1] - calm.A), (float)(seen[2] - calm.B));
                pixels.InksOf(pixel, inks);
                inks.AsSpan(plan.Model.FrontInks).Clear();
                Lab without = plan.Seen(inks, pixels.Strength[pixel] / 255.0).Day;
                leak[pixel] = (float)Ciede2000.Between(new(seen[0], seen[1], seen[2]), without);
            }
        });
        float[] night = [.. Enumerable.Range(0, pixels.Count).Select(p => pixels.Wanted[(6 * p) + 3] - even[3 * p])];
        return new(DifferenceSummary.Of(leak), Seen(plan, small, pixels, pixelsPerMm, moved), Correlate(moved[0], night));
    }

    // What the eye sees of the moves at the viewing distance, as differences.
    private static float[] Seen(PanelPlan plan, PairPicture small, JudgedPixels pixels, double pixelsPerMm, float[][] moved)
    {
        double perDegree = pixelsPerMm * plan.Wish.ViewingDistanceMm * Math.Tan(Math.PI / 180), luminance = Math.Max(1, plan.Aim.DayWhite.Y / 3);
        float[][] seen = [.. moved.Select(m => EyeFilter.Weigh(m, small.Width, small.Height, perDegree, luminance))];
        float[] map = new float[pixels.Count];
        for (int pixel = 0; pixel < map.Length; pixel++)
        {
            ReadOnlySpan<float> at = pixels.Seen.AsSpan(6 * pixel, 6);
            Lab with = new(at[0], at[1], at[2]);
            map[pixel] = (float)Ciede2000.Between(with, new(with.L - seen[0][pixel], with.A - seen[1][pixel], with.B - seen[2][pixel]));
        }

        return map;
    }

    // The night picture's means over two degrees of view.
    private static float[] EvenNight(PanelPlan plan, PairPicture small, double pixelsPerMm)
    {
        SlowMap mean = new(3, small.Width, small.Height);
        int[] counts = new int[mean.Columns * mean.Rows];
        for (int pixel = 0; pixel < small.Width * small.Height; pixel++)
        {
            (double x, double y) = PlaceOf(small, pixel);
            int cell = mean.CellOf(x, y);
            counts[cell]++;
            for (int i = 0; i < 3; i++)
                mean.Values[(3 * cell) + i] += small.Pixels[(6 * pixel) + 3 + i];
        }

        for (int cell = 0; cell < counts.Length; cell++)
        {
            for (int i = 0; i < 3; i++)
                mean.Values[(3 * cell) + i] /= Math.Max(1, counts[cell]);
        }

        double twoDegrees = plan.Wish.ViewingDistanceMm * Math.Tan(2 * Math.PI / 180) * pixelsPerMm;
        mean.Blur(Math.Max(2, twoDegrees * mean.Columns / small.Width));
        float[] even = new float[3 * small.Width * small.Height];
        for (int pixel = 0; pixel < small.Width * small.Height; pixel++)
        {
            (double x, double y) = PlaceOf(small, pixel);
            mean.At(x, y, even.AsSpan(3 * pixel, 3));
        }

        return even;
    }

    private static Lab Calm(PanelPlan plan, PairPicture small, float[] even, int pixel, double[] inks)
    {
        Span<float> pair = stackalloc float[6], narrow = stackalloc float[inks.Length];
        small.At(pixel)[..3].CopyTo(pair);
        even.AsSpan(3 * pixel, 3).CopyTo(pair[3..]);
        (double x, double y) = PlaceOf(small, pixel);
        double strength = plan.InksAt(pair, x, y, narrow);
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = narrow[ink];
        return plan.Seen(inks, strength).Day;
    }

    private static (double X, double Y) PlaceOf(PairPicture small, int pixel) =>
        (((pixel % small.Width) + 0.5) / small.Width, ((pixel / small.Width) + 0.5) / small.Height);

    private static double Correlate(float[] one, float[] other)
    {
        double meanOne = one.Average(), meanOther = other.Average(), both = 0, own = 0, its = 0;
        for (int i = 0; i < one.Length; i++)
        {
            double x = one[i] - meanOne, y = other[i] - meanOther;
            (both, own, its) = (both + (x * y), own + (x * x), its + (y * y));
        }

        return own > 0 && its > 0 ? both / Math.Sqrt(own * its) : 0;
    }
}
