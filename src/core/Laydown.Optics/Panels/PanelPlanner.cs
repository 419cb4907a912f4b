using Laydown.Colour.Spaces;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Panels;

/// <summary>Settles what holds for a whole pair of pictures: aim, strength of the white, and how areas out of reach are moved.</summary>
public static class PanelPlanner
{
    private const int ChoosingPixels = 240, MostFineCells = 12_000, MapPixels = 40_000, FreeLevels = 4, ShiftRounds = 3;

    // Areas move a little further than to what was reached, so that their lights and darks both find room.
    private const float Beyond = 1.3f;

    // Less grain is worth this much of a difference on the mean (common practice, no source).
    private const double SmoothWorth = 0.15;

    // A tenth of the contrast is worth 0.8 ΔE00 on the mean (common practice, no source).
    private const double ContrastWorth = 0.08;

    /// <summary>A plan for a pair.</summary>
    /// <param name="stack">What can be printed.</param>
    /// <param name="day">The light by day.</param>
    /// <param name="night">The light with the lamp on.</param>
    /// <param name="wish">How the pictures are traded.</param>
    /// <param name="small">The whole of both pictures, small: 250 000 pixels are plenty.</param>
    /// <param name="pixelsPerMm">Resolution of <paramref name="small"/>.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="cancellation">Looked at between steps.</param>
    /// <exception cref="ArgumentException">The scenes do not fit each other.</exception>
    public static PanelPlan Plan(
        PanelStack stack, Scene day, Scene night, PanelWish wish, PairPicture small, double pixelsPerMm, IProgress<double>? progress,
        CancellationToken cancellation)
    {
        if (stack.Splits.Count == 0 || stack.LightInksBare)
            return Plan(stack, day, night, wish, small, pixelsPerMm, progress, 1, cancellation);

        // A light ink is smoother, but dots of the dark one leave gaps through which the night's hue comes: where that counts, dark inks
        // print alone. Both ways are planned and what they leave undone is compared.
        PanelPlan shared = Plan(stack, day, night, wish, small, pixelsPerMm, progress, 0.5, cancellation);
        PanelStack dark = new(stack.Sheet, stack.Layers, stack.ViewedFrom, stack.Limits, stack.Splits) { LightInksBare = true };
        PanelPlan alone = Plan(dark, day, night, wish, small, pixelsPerMm, null, 0, cancellation);
        progress?.Report(1);
        return Cost(shared, small, cancellation) <= Cost(alone, small, cancellation) + SmoothWorth ? shared : alone;
    }

    private static PanelPlan Plan(
        PanelStack stack, Scene day, Scene night, PanelWish wish, PairPicture small, double pixelsPerMm, IProgress<double>? progress,
        double share, CancellationToken cancellation)
    {
        PanelModel model = new(stack, day, night);
        PanelLight[] lights = [.. Strengths(wish).Select(model.At)];
        PanelAim aim = Aim(lights, stack.Limits, wish, small, cancellation);
        progress?.Report(0.3 * share);
        bool fine = PairTable.FineCells(small, small.Sample(MapPixels)) <= MostFineCells;
        PairTable[] tables = [.. lights.Select(l => new PairTable(new PairSolver(l, stack.Limits, aim, wish.NightWeight), fine))];
        PanelPlan plain = new(model, wish, aim, tables, null, null);
        SlowMap? white = lights.Length > 1 ? WhiteMap(plain, small, pixelsPerMm, cancellation) : null;
        progress?.Report(0.6 * share);
        PanelPlan still = new(model, wish, aim, tables, null, white), plan = still;
        if (!wish.KeepContrast)
            return still;
        for (int round = 0; round < ShiftRounds; round++)
        {
            plan = new(model, wish, aim, tables, Shift(plan, small, pixelsPerMm, cancellation), white);
            progress?.Report(share * (0.6 + (0.3 * (round + 1) / ShiftRounds)));
        }

        // Moving areas costs differences; it stays where it brings contrast that is worth them.
        return Cost(plan, small, cancellation) < Cost(still, small, cancellation) ? plan : still;
    }

    private static double Cost(PanelPlan plan, PairPicture small, CancellationToken cancellation)
    {
        JudgedPixels pixels = JudgedPixels.Of(plan, small, cancellation);
        double weight = plan.Wish.NightWeight, lit = weight / (1 + weight);
        double missed = ((1 - lit) * pixels.DayDifference.Average()) + (lit * pixels.NightDifference.Average());
        double kept = ((1 - lit) * PanelJudge.Contrast(pixels, small, 0)) + (lit * PanelJudge.Contrast(pixels, small, 3));
        return missed + (ContrastWorth * (100 - kept));
    }

    private static double[] Strengths(PanelWish wish)
    {
        if (wish.White != WhiteUse.Free)
            return [.. wish.WhiteStrengths];
        (double least, double most) = (wish.WhiteStrengths[0], wish.WhiteStrengths[1]);
        return [.. Enumerable.Range(0, FreeLevels).Select(i => least + ((most - least) * i / (FreeLevels - 1)))];
    }

    // Day white must hold where the white is strongest, night white is measured where it lets most through.
    private static PanelAim Aim(PanelLight[] lights, PanelLimits limits, PanelWish wish, PairPicture small, CancellationToken cancellation)
    {
        PanelAim Of(double lift, double exposure)
        {
            PanelAim strong = PanelAim.For(lights[^1], limits, lift, exposure);
            return lights.Length == 1 ? strong : new(strong.DayWhite, PanelAim.For(lights[0], limits, lift, exposure).NightWhite, lift, exposure);
        }

        double lift = wish.LiftPercent ?? 15, exposure = wish.NightExposure ?? 0.4;
        AimCost cost = new(lights[lights.Length / 2], limits, wish.NightWeight, small, small.Sample(ChoosingPixels));
        if (wish.NightExposure is null)
            exposure = Cheapest([1, 0.7, 0.5, 0.35, 0.25], e => cost.Of(Of(lift, e), cancellation));
        if (wish.LiftPercent is null)
            lift = Cheapest([0, 5, 10, 15, 20, 25, 30], l => cost.Of(Of(l, exposure), cancellation));
        return Of(lift, exposure);
    }

    private static double Cheapest(double[] candidates, Func<double, double> cost) => candidates.MinBy(cost);

    // What each strength leaves undone, cell by cell, made smooth before it is compared: an edge in the white is seen by day.
    private static SlowMap WhiteMap(PanelPlan plan, PairPicture small, double pixelsPerMm, CancellationToken cancellation)
    {
        int levels = plan.Tables.Count;
        SlowMap cost = new(levels, small.Width, small.Height), white = new(1, small.Width, small.Height);
        int[] counts = new int[cost.Columns * cost.Rows];
        Gather(small, cost, counts, (pixel, x, y, into) =>
        {
            Span<float> wish = stackalloc float[6], inks = stackalloc float[plan.Model.Tones.Count];
            Span<double> exact = stackalloc double[plan.Model.Tones.Count];
            plan.Wanted(small.At(pixel), wish);
            for (int level = 0; level < levels; level++)
            {
                plan.Tables[level].Inks(wish, inks);
                for (int ink = 0; ink < exact.Length; ink++)
                    exact[ink] = inks[ink];
                into[level] = (float)plan.Tables[level].Solver.Left(new(wish[0], wish[1], wish[2]), new(wish[3], wish[4], wish[5]), exact);
            }
        }, cancellation);
        cost.Blur(Cells(cost, small, pixelsPerMm, plan.Wish.ViewingDistanceMm));
        for (int cell = 0; cell < counts.Length; cell++)
            white.Values[cell] = (float)Best(cost.Values.AsSpan(cell * levels, levels), plan.WhiteStrengths, plan.Wish.White);
        white.Blur(Cells(cost, small, pixelsPerMm, plan.Wish.ViewingDistanceMm) / 2);
        return white;
    }

    // The lowest step, or between steps the bottom of the parabola through it and its neighbours.
    private static double Best(ReadOnlySpan<float> cost, IReadOnlyList<double> strengths, WhiteUse use)
    {
        int low = 0;
        for (int i = 1; i < cost.Length; i++)
            low = cost[i] < cost[low] ? i : low;
        if (use != WhiteUse.Free || low == 0 || low == cost.Length - 1)
            return strengths[low];
        double left = cost[low - 1] - cost[low], right = cost[low + 1] - cost[low];
        double step = left + right > 0 ? (left - right) / (2 * (left + right)) : 0;
        return strengths[low] + (step * (strengths[^1] - strengths[0]) / (strengths.Count - 1));
    }

    // What cannot be reached and what was wished there, averaged over areas of about a degree of view: pixels that wish alike then move together, so
    // that what distinguishes them stays. Channels: six moves, six wishes, both by weight, the weight, squares of the wishes.
    private static SlowMap Shift(PanelPlan plan, PairPicture small, double pixelsPerMm, CancellationToken cancellation)
    {
        SlowMap missing = new(PanelPlan.ShiftChannels, small.Width, small.Height);
        Gather(small, missing, new int[missing.Columns * missing.Rows], (pixel, x, y, into) =>
        {
            Span<float> wish = stackalloc float[6], inks = stackalloc float[plan.Model.InkCount];
            Span<double> exact = stackalloc double[plan.Model.InkCount];
            plan.Wanted(small.At(pixel), wish);
            double strength = plan.InksAt(small.At(pixel), x, y, inks);
            for (int ink = 0; ink < exact.Length; ink++)
                exact[ink] = inks[ink];
            (Lab day, Lab night) = plan.Seen(exact, strength);
            double byDay = Ciede2000.Between(day, new(wish[0], wish[1], wish[2])), lit = Ciede2000.Between(night, new(wish[3], wish[4], wish[5]));
            float weight = (float)Math.Min(1, Math.Max(byDay, lit) / PanelJudge.Reached);
            ReadOnlySpan<double> seen = [day.L, day.A, day.B, night.L, night.A, night.B];
            for (int i = 0; i < 6; i++)
            {
                (into[i], into[6 + i]) = (weight * Beyond * (float)(seen[i] - wish[i]), weight * wish[i]);
                into[13] += weight * wish[i] * wish[i];
            }

            into[12] = weight;
        }, cancellation);
        missing.Blur(Cells(missing, small, pixelsPerMm, plan.Wish.ViewingDistanceMm));
        return missing;
    }

    // Standard deviation of the means: half a degree of view, at least one cell.
    private static double Cells(SlowMap map, PairPicture small, double pixelsPerMm, double distanceMm) =>
        Math.Max(1, distanceMm * Math.Tan(0.5 * Math.PI / 180) * pixelsPerMm * map.Columns / small.Width);

    private delegate void Measure(int pixel, double x, double y, Span<float> into);

    // Means over the cells of a map; cells are summed in the order of pixels, so the same means come out for any number of threads.
    private static void Gather(PairPicture small, SlowMap map, int[] counts, Measure measure, CancellationToken cancellation)
    {
        int[] sample = small.Sample(MapPixels);
        float[] values = new float[map.Channels * sample.Length];
        Parallel.For(0, (sample.Length + 255) / 256, new ParallelOptions { CancellationToken = cancellation }, block =>
        {
            for (int i = 256 * block; i < Math.Min(sample.Length, 256 * (block + 1)); i++)
            {
                (double x, double y) = PlaceOf(small, sample[i]);
                measure(sample[i], x, y, values.AsSpan(i * map.Channels, map.Channels));
            }
        });
        for (int i = 0; i < sample.Length; i++)
        {
            (double x, double y) = PlaceOf(small, sample[i]);
            int cell = map.CellOf(x, y);
            counts[cell]++;
            for (int channel = 0; channel < map.Channels; channel++)
                map.Values[(cell * map.Channels) + channel] += values[(i * map.Channels) + channel];
        }

        Fill(map, counts);
    }

    // A cell that no sample fell into takes its left or upper neighbour's mean.
    private static void Fill(SlowMap map, int[] counts)
    {
        for (int cell = 0; cell < counts.Length; cell++)
        {
            Span<float> values = map.Values.AsSpan(cell * map.Channels, map.Channels);
            if (counts[cell] > 0)
            {
                foreach (ref float value in values)
                    value /= counts[cell];
            }
            else if (cell > 0)
            {
                int from = cell % map.Columns > 0 ? cell - 1 : cell - map.Columns;
                map.Values.AsSpan(from * map.Channels, map.Channels).CopyTo(values);
            }
        }
    }

    private static (double X, double Y) PlaceOf(PairPicture small, int pixel) =>
        (((pixel % small.Width) + 0.5) / small.Width, ((pixel / small.Width) + 0.5) / small.Height);
}
