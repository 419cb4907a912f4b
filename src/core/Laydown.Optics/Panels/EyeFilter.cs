namespace Laydown.Optics.Panels;

/// <summary>Weights a map of differences by what the eye sees of it at a distance: octave by octave.</summary>
/// <remarks>Octaves are differences of box means of doubling width; each counts by the contrast sensitivity at its frequency relative to
/// the highest. What is even all over counts nothing: an even change is no ghost.</remarks>
internal static class EyeFilter
{
    /// <summary>The weighted map.</summary>
    /// <param name="map">Differences, row after row.</param>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="pixelsPerDegree">Pixels in a degree of view.</param>
    /// <param name="cdPerM2">Luminance the eye is adapted to.</param>
    internal static float[] Weigh(float[] map, int width, int height, double pixelsPerDegree, double cdPerM2)
    {
        float[] weighted = new float[map.Length], fine = [.. map];
        double field = Math.Max(1, Math.Max(width, height) / pixelsPerDegree);
        for (int radius = 1; radius < Math.Max(width, height); radius *= 2)
        {
            // A mean over 2r + 1 pixels leaves out what is finer than about one cycle in four radii.
            float[] coarse = BoxMean(BoxMean(fine, width, height, radius), width, height, radius);
            float weight = (float)ContrastSensitivity.Relative(Math.Max(0.05, pixelsPerDegree / (4.0 * radius)), cdPerM2, field);
            for (int i = 0; i < map.Length; i++)
                weighted[i] += weight * (fine[i] - coarse[i]);
            fine = coarse;
        }

        return weighted;
    }

    private static float[] BoxMean(float[] map, int width, int height, int radius)
    {
        float[] across = new float[map.Length], both = new float[map.Length];
        for (int row = 0; row < height; row++)
            Line(map, across, row * width, 1, width, radius);
        for (int column = 0; column < width; column++)
            Line(across, both, column, width, height, radius);
        return both;
    }

    // Running sum; at the ends the mean is over what is there.
    private static void Line(float[] from, float[] to, int start, int stride, int count, int radius)
    {
        double sum = 0;
        for (int i = 0; i < Math.Min(radius, count); i++)
            sum += from[start + (i * stride)];
        for (int i = 0; i < count; i++)
        {
            if (i + radius < count)
                sum += from[start + ((i + radius) * stride)];
            if (i - radius - 1 >= 0)
                sum -= from[start + ((i - radius - 1) * stride)];
            to[start + (i * stride)] = (float)(sum / (Math.Min(count - 1, i + radius) - Math.Max(0, i - radius) + 1));
        }
    }
}
