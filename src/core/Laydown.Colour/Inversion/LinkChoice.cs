namespace Laydown.Colour.Inversion;

/// <summary>A link table chosen for its error, and what it misses.</summary>
/// <param name="Table">The table.</param>
/// <param name="Bend">Exponent of its curves.</param>
/// <param name="MeanError">Mean ΔE00 between table and exact way.</param>
/// <param name="P99Error">99th percentile.</param>
/// <param name="MaxError">Largest of the values tried.</param>
public sealed record LinkChoice(LinkTables Table, double Bend, double MeanError, double P99Error, double MaxError)
{
    private const int Samples = 4000;

    /// <summary>The smallest table whose mean error is at most 0.3 and whose 99th percentile is at most 1.0 ΔE00, else the best of the largest.</summary>
    /// <param name="maker">Makes tables.</param>
    /// <param name="progress">Told the share done; may be null.</param>
    /// <param name="cancellation">Stops between tables.</param>
    public static LinkChoice Smallest(LinkMaker maker, IProgress<double>? progress, CancellationToken cancellation)
    {
        int[] sizes = maker.Channels == 3 ? [17, 25, 33] : [9, 13, 17];
        double[] bends = [1, 1.4];
        LinkChoice? best = null;
        int tried = 0;
        foreach (int steps in sizes)
        {
            foreach (double bend in bends)
            {
                LinkTables table = maker.Make(steps, bend, null, cancellation);
                double[] errors = [.. maker.Error(table, Samples).Order()];
                LinkChoice choice = new(table, bend, errors.Average(), errors[(int)(0.99 * Samples) - 1], errors[^1]);
                if (best is null || choice.P99Error < best.P99Error)
                    best = choice;
                progress?.Report(++tried / (double)(sizes.Length * bends.Length));
            }

            if (best is { MeanError: <= 0.3, P99Error: <= 1 })
                break;
        }

        return best!;
    }
}
