namespace Laydown.Raster.Screens;

/// <summary>Which share of dots is at least as large as each drop, by tone; all arithmetic in whole numbers, so that every width
/// agrees.</summary>
/// <remarks>
/// Between two drops one would mix just these two, and at a drop's own tone the texture would vanish: a contour in every blend. So around
/// each inner drop
/// three are mixed: the next larger drop begins before the smaller one has filled the sheet, slowly at first; the smaller one slows down as
/// much, so the mean
/// volume equals the tone everywhere. Own shape, no source.
/// </remarks>
internal sealed class DropMix
{
    // Half the overlap around an inner drop, as a share of the steps beside it: a step between two inner drops is shared by both. Chosen by
    // measurement:
    // neighbours of 64 tones then differ by less than 15 % in what an eye sees of them.
    private const double Shared = 0.5;
    private const double Outer = 0.7;

    private readonly DropRamp[] ramps;

    /// <summary>The mix for these drops.</summary>
    public DropMix(DropLevels drops)
    {
        Steps = drops.Levels - 1;
        double[] volumes = [.. Enumerable.Range(0, drops.Levels).Select(drops.ShareOf)];
        double[] halves = new double[drops.Levels];
        for (int level = 1; level < Steps; level++)
        {
            double below = (level == 1 ? Outer : Shared) * (volumes[level] - volumes[level - 1]);
            halves[level] = Math.Min(below, (level == Steps - 1 ? Outer : Shared) * (volumes[level + 1] - volumes[level]));
        }

        ramps = [.. Enumerable.Range(0, Steps).Select(step => new DropRamp(tone =>
            (Passed(tone, volumes[step], halves[step]) - Passed(tone, volumes[step + 1], halves[step + 1])) / (volumes[step + 1] - volumes[step])))];
    }

    /// <summary>How many drops.</summary>
    public int Steps { get; }

    /// <summary>How the share of dots with drop <paramref name="step"/> + 1 or larger grows.</summary>
    public DropRamp this[int step] => ramps[step];

    // How far the tone lies beyond a volume: 0 before it, a parabola around it, then straight. Differences of two of these add up to the
    // tone.
    private static double Passed(double tone, double volume, double half)
    {
        double beyond = tone - volume;
        return beyond >= half ? beyond : beyond <= -half ? 0 : (beyond + half) * (beyond + half) / (4 * half);
    }
}
