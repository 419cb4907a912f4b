using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>What an aim costs on a sample of a pair: what the panel misses of it, and what it gives away before.</summary>
/// <remarks>
/// Missed: root mean square of ΔE00 of both views, by weight. Given away: lifted blacks at 0.3 of their ΔE00, because the eye soon takes a
/// panel's black for black; night light at 1.5 for each halving (both common practice, no source).
/// </remarks>
internal sealed class AimCost(PanelLight light, PanelLimits limits, double nightWeight, PairPicture pictures, int[] sample)
{
    private const double LiftShare = 0.3, HalvingCost = 1.5;

    internal double Of(PanelAim aim, CancellationToken cancellation)
    {
        PairSolver solver = new(light, limits, aim, nightWeight);
        double[] missed = new double[sample.Length], lifted = new double[sample.Length];
        Parallel.For(0, sample.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            ReadOnlySpan<float> pair = pictures.At(sample[i]);
            Lab picture = new(pair[0], pair[1], pair[2]), day = aim.Day(picture), night = new(pair[3], pair[4], pair[5]);
            Span<double> inks = stackalloc double[light.InkCount];
            solver.Solve(day, night, inks);
            (Xyz seenDay, Xyz seenNight) = light.See(inks);
            double byDay = Ciede2000.Between(day, aim.SeenByDay(seenDay)), lit = Ciede2000.Between(night, aim.SeenLit(seenNight));
            missed[i] = ((byDay * byDay) + (nightWeight * lit * lit)) / (1 + nightWeight);
            lifted[i] = Ciede2000.Between(picture, day);
        });
        double darker = Math.Min(1, nightWeight) * HalvingCost * Math.Log2(1 / aim.NightExposure);
        return Math.Sqrt(missed.Average()) + (LiftShare * lifted.Average()) + darker;
    }
}
