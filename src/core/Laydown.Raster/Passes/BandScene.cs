using Laydown.Colour.Vision;

namespace Laydown.Raster.Passes;

/// <summary>A picture with its inks, made ready to have bands laid on it.</summary>
internal sealed class BandScene
{
    /// <summary>Parts a profile has, each with a weight of its own in a tone: small errors, gaps, register, loss.</summary>
    private const int Parts = 4;

    private readonly BandWish wish;
    private readonly EyeAlongFeed eye;
    private readonly double best;
    private readonly double[] lightness;

    /// <summary>Makes ready.</summary>
    /// <exception cref="ArgumentException">The picture has another number of planes than there are inks.</exception>
    public BandScene(BandWish wish)
    {
        if (wish.Picture.Inks != wish.Inks.Count)
            throw new ArgumentException(Invariant($"Picture: found {wish.Picture.Inks} planes; wanted {wish.Inks.Count}, one for each ink."), nameof(wish));
        this.wish = wish;
        best = BandForecast.BestOf(wish.Viewer);
        BartenEye viewer = wish.Viewer.Eye;
        eye = new(wish.Plan.Rows, wish.Viewer.MmPerDegree / wish.Plan.Head.RowMm, u => u > 100 ? 0 : BartenSensitivity.At(u, viewer) / best);
        lightness = new double[wish.Picture.Rows * wish.Picture.Columns];
        for (int row = 0; row < wish.Picture.Rows; row++)
            for (int column = 0; column < wish.Picture.Columns; column++)
                lightness[(row * wish.Picture.Columns) + column] = LightnessAt(row, column);
    }

    /// <summary>The most visible place with these errors.</summary>
    public BandPeak Peak(PlacementErrors errors, bool missing, bool slanted)
    {
        List<(double[][] Profiles, double[][] Weights)> groups = [.. Groups(missing, slanted).Select(g => (Seen(errors, g.Layer, g.Flaws), WeightsOf(g.Inks)))];
        BandPeak worst = default;
        int columns = wish.Picture.Columns;
        Span<double> profile = stackalloc double[Parts];
        double[] line = new double[columns];
        for (int sample = 0; sample < eye.Samples; sample++)
        {
            // Changes of lightness of all inks add up before the peak is looked for.
            int row = (int)((long)sample * eye.RowsPerSample * wish.Picture.Rows / wish.Plan.Rows);
            Array.Clear(line);
            foreach ((double[][] profiles, double[][] weights) in groups)
            {
                for (int part = 0; part < Parts; part++)
                    Add(line, weights[part].AsSpan(row * columns, columns), profiles[part][sample]);
            }

            for (int column = 0; column < columns; column++)
            {
                if (Math.Abs(line[column]) > worst.DeltaL)
                    worst = At(sample, row, column, line[column]);
            }
        }

        return worst;
    }

    private BandPeak At(int sample, int row, int column, double deltaL) => new(
        Math.Abs(deltaL),
        Math.Abs(deltaL) * 3 / (lightness[(row * wish.Picture.Columns) + column] + 16) * best,
        deltaL < 0,
        (sample + 0.5) / eye.Samples,
        (column + 0.5) / wish.Picture.Columns);

    private static void Add(double[] line, ReadOnlySpan<double> weights, double amount)
    {
        if (amount == 0)
            return;
        for (int column = 0; column < line.Length; column++)
            line[column] += weights[column] * amount;
    }

    // Inks of one layer whose nozzles have the same flaws walk alike and need one simulation.
    private IEnumerable<(int Layer, NozzleFlaws Flaws, int[] Inks)> Groups(bool missing, bool slanted) =>
        wish.Inks.Index().GroupBy(i => (i.Item.Layer, Flaws: Only(i.Item.Flaws, missing, slanted)))
            .Select(g => (g.Key.Layer, g.Key.Flaws, g.Select(i => i.Index).ToArray()));

    private static NozzleFlaws Only(NozzleFlaws flaws, bool missing, bool slanted)
    {
        bool keepsMissing = missing && flaws.Missing.Count > 0, keepsSlants = slanted && flaws.SlantUm.Count > 0;
        if (!keepsMissing && !keepsSlants)
            return NozzleFlaws.None;
        return (keepsMissing || flaws.Missing.Count == 0) && (keepsSlants || flaws.SlantUm.Count == 0)
            ? flaws
            : new(keepsMissing ? flaws.Missing : NozzleFlaws.None.Missing, keepsSlants ? flaws.SlantUm : NozzleFlaws.None.SlantUm);
    }

    private double[][] Seen(PlacementErrors errors, int layer, NozzleFlaws flaws)
    {
        FeedProfile profile = FeedProfile.Of(wish.Plan, layer, errors, flaws, eye.BeyondRows);
        (double[] small, double[] gaps) = eye.See([.. profile.Error.Select(DotTones.Small)], [.. profile.Error.Select(DotTones.Gap)]);
        (double[] register, double[] lost) = eye.See(profile.Register, profile.Lost);
        return [small, gaps, register, lost];
    }

    // What one unit of each part does to L*, pixel by pixel, summed over the inks of a group.
    private double[][] WeightsOf(int[] inks)
    {
        double[][] weights = [.. Enumerable.Range(0, Parts).Select(_ => new double[lightness.Length])];
        foreach (int ink in inks)
        {
            double taken = 1 - wish.Inks[ink].Luminance;
            for (int row = 0; row < wish.Picture.Rows; row++)
            {
                ReadOnlySpan<float> line = wish.Picture.Row(ink, row);
                for (int column = 0; column < line.Length; column++)
                {
                    int at = (row * line.Length) + column;
                    double g = Math.Clamp(line[column], 0, 1), slope = -(lightness[at] + 16) / 3 * taken / (1 - (g * taken));
                    weights[0][at] += slope * DotTones.OfError(g);
                    weights[1][at] += slope * DotTones.OfGap(g);
                    weights[2][at] += slope * DotTones.OfRegister(g);
                    weights[3][at] += slope * DotTones.OfLost(g, wish.Mended);
                }
            }
        }

        return weights;
    }

    private double LightnessAt(int row, int column)
    {
        double y = 1;
        for (int ink = 0; ink < wish.Inks.Count; ink++)
            y *= 1 - (Math.Clamp(wish.Picture.Row(ink, row)[column], 0, 1) * (1 - wish.Inks[ink].Luminance));
        return Math.Max(0, (116 * Math.Cbrt(y)) - 16);
    }
}
