namespace Laydown.Raster.Screens;

/// <summary>Which share of dots is at least as large as each drop, by tone; all arithmetic in whole numbers, so that every width agrees.</summary>
/// <remarks>
/// Between two drops one would mix just these two, and at a drop's own tone the texture would vanish: a contour in every blend. So around each inner drop
/// three are mixed: the next larger drop begins before the smaller one has filled the sheet, and both rise at half speed where they overlap; the mean volume
/// equals the tone everywhere.
/// </remarks>
internal sealed class DropMix
{
    /// <summary>Half the overlap around an inner drop, as a share of the smaller of the two steps beside it.</summary>
    public const double Overlap = 0.5;

    private readonly DropRamp[] ramps;

    /// <summary>The mix for these drops.</summary>
    public DropMix(DropLevels drops)
    {
        Steps = drops.Levels - 1;
        ramps = new DropRamp[Steps];
        double[] volumes = Enumerable.Range(0, drops.Levels).Select(drops.ShareOf).ToArray();
        double[] halves = new double[Steps + 1];
        for (int level = 1; level < Steps; level++)
            halves[level] = Overlap * Math.Min(volumes[level] - volumes[level - 1], volumes[level + 1] - volumes[level]);
        for (int step = 0; step < Steps; step++)
            ramps[step] = Ramp(volumes, halves, step);
    }

    /// <summary>How many drops.</summary>
    public int Steps { get; }

    /// <summary>How the share of dots with drop <paramref name="step"/> + 1 or larger grows.</summary>
    public DropRamp this[int step] => ramps[step];

    private static DropRamp Ramp(double[] volumes, double[] halves, int step)
    {
        // Half speed where it overlaps with the step below, full speed, then half speed where it overlaps with the step above.
        double low = volumes[step], high = volumes[step + 1], size = high - low;
        double[] tones = [low - halves[step], low + halves[step], high - halves[step + 1], high + halves[step + 1]];
        double[] shares = [0, halves[step] / size, 1 - (halves[step + 1] / size), 1];
        return new(tones, shares);
    }
}
