using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>Every pixel of a small pair as its laydown makes it look, beside what is aimed at.</summary>
internal sealed class JudgedPixels
{
    private readonly PanelPlan plan;

    private JudgedPixels(PanelPlan plan, PairPicture small)
    {
        (this.plan, Count) = (plan, small.Width * small.Height);
        (Inks, Strength, Planes) = (new byte[plan.Model.InkCount * Count], new byte[Count], new byte[plan.CoverageCount * Count]);
        (Seen, Wanted) = (new float[6 * Count], new float[6 * Count]);
        (DayDifference, NightDifference, DayToPicture) = (new float[Count], new float[Count], new float[Count]);
        NightLuminance = new double[Count];
    }

    internal int Count { get; }

    /// <summary>Inks in front and behind, pixel after pixel.</summary>
    internal byte[] Inks { get; }

    /// <summary>Strength of the white, 255 = full.</summary>
    internal byte[] Strength { get; }

    /// <summary>Coverage after coverage in print order.</summary>
    internal byte[] Planes { get; }

    /// <summary>Six values a pixel: Lab by day, then lit.</summary>
    internal float[] Seen { get; }

    /// <summary>The same as aimed at.</summary>
    internal float[] Wanted { get; }

    internal float[] DayDifference { get; }

    internal float[] NightDifference { get; }

    internal float[] DayToPicture { get; }

    internal double[] NightLuminance { get; }

    internal static JudgedPixels Of(PanelPlan plan, PairPicture small, CancellationToken cancellation)
    {
        JudgedPixels pixels = new(plan, small);
        Parallel.For(0, small.Height, new ParallelOptions { CancellationToken = cancellation }, row => pixels.Row(small, row));
        return pixels;
    }

    /// <summary>Mean laydown of every coverage.</summary>
    internal double[] MeanInk()
    {
        double[] means = new double[plan.CoverageCount];
        for (int plane = 0; plane < means.Length; plane++)
        {
            long sum = 0;
            foreach (byte code in Planes.AsSpan(plane * Count, Count))
                sum += code;
            means[plane] = sum / (255.0 * Count);
        }

        return means;
    }

    /// <summary>Pixels spread evenly.</summary>
    internal int[] Sample(int most)
    {
        int step = Math.Max(1, Count / most);
        return [.. Enumerable.Range(0, (Count + step - 1) / step).Select(i => i * step)];
    }

    /// <summary>A value of each sampled pixel in another model of the panel.</summary>
    internal T[] See<T>(PanelModel model, int[] sample, Func<PanelLight, double[], T> value)
    {
        Lazy<PanelLight>[] lights = [.. Enumerable.Range(0, 256).Select(code => new Lazy<PanelLight>(() => model.At(code / 255.0)))];
        T[] values = new T[sample.Length];
        Parallel.For(0, sample.Length, () => new double[plan.Model.InkCount], (i, _, inks) =>
        {
            InksOf(sample[i], inks);
            values[i] = value(lights[Strength[sample[i]]].Value, inks);
            return inks;
        }, _ => { });
        return values;
    }

    /// <summary>Inks of a pixel, 0 to 1.</summary>
    internal void InksOf(int pixel, Span<double> inks)
    {
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = Inks[(pixel * inks.Length) + ink] / 255.0;
    }

    private void Row(PairPicture small, int row)
    {
        int width = small.Width, first = row * width, inkCount = plan.Model.InkCount;
        byte[] band = new byte[plan.CoverageCount * width];
        plan.Rows(row, 1, width, small.Height, small.Pixels.AsSpan(6 * first, 6 * width), band);
        plan.Wanted(small.Pixels.AsSpan(6 * first, 6 * width), Wanted.AsSpan(6 * first, 6 * width));
        for (int plane = 0; plane < plan.CoverageCount; plane++)
            band.AsSpan(plane * width, width).CopyTo(Planes.AsSpan((plane * Count) + first));
        PanelStack stack = plan.Model.Stack;
        (int front, int back) = (stack.FirstCoverage(stack.DayLayer), stack.FirstCoverage(stack.NightLayer));
        int white = stack.FirstCoverage(stack.WhiteLayers[0]);
        double[] inks = new double[inkCount];
        for (int x = 0; x < width; x++)
        {
            int pixel = first + x;
            for (int ink = 0; ink < inkCount; ink++)
            {
                int plane = ink < plan.Model.FrontInks ? front + ink : back + ink - plan.Model.FrontInks;
                Inks[(pixel * inkCount) + ink] = band[(plane * width) + x];
            }

            Strength[pixel] = band[(white * width) + x];
            Look(small, pixel, inks);
        }
    }

    private void Look(PairPicture small, int pixel, double[] inks)
    {
        InksOf(pixel, inks);
        (Xyz day, Xyz night) = plan.LightAt(Strength[pixel] / 255.0).See(inks);
        (Lab seenDay, Lab seenNight) = (plan.Aim.SeenByDay(day), plan.Aim.SeenLit(night));
        Put(Seen, pixel, seenDay, seenNight);
        NightLuminance[pixel] = night.Y;
        ReadOnlySpan<float> wanted = Wanted.AsSpan(6 * pixel, 6), picture = small.At(pixel);
        DayDifference[pixel] = (float)Ciede2000.Between(seenDay, new(wanted[0], wanted[1], wanted[2]));
        NightDifference[pixel] = (float)Ciede2000.Between(seenNight, new(wanted[3], wanted[4], wanted[5]));
        DayToPicture[pixel] = (float)Ciede2000.Between(seenDay, new(picture[0], picture[1], picture[2]));
    }

    private static void Put(float[] values, int pixel, Lab day, Lab night)
    {
        ReadOnlySpan<double> six = [day.L, day.A, day.B, night.L, night.A, night.B];
        for (int i = 0; i < 6; i++)
            values[(6 * pixel) + i] = (float)six[i];
    }
}
