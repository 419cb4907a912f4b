using Laydown.Colour.Inversion;
using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>A link whose grid was chosen by what it misses, measured through <see cref="InkLink"/> as it will be run.</summary>
/// <remarks>
/// Habit is no guide: where black starts sharply a table of 33³ nodes misses up to tens of codes in a few places, though little on the mean.
/// Errors are those of all inks of scattered pixels, every eighth of them with all channels alike.
/// </remarks>
/// <param name="Table">The link.</param>
/// <param name="Bend">Exponent of the curve before it; 1 where curves did not help.</param>
/// <param name="RmsError">Root mean square, codes of 255.</param>
/// <param name="MaxError">Largest, codes of 255.</param>
/// <param name="MeetsWish">Whether both lie within the wish; else it is the grid with the least rms of all.</param>
public sealed record LinkGrid(LinkTables Table, double Bend, double RmsError, double MaxError, bool MeetsWish)
{
    private const int Batch = 4096;
    private static readonly double[] Primes = [2, 3, 5, 7];

    /// <summary>The smallest grid that meets the wish, of its curves the one with the least rms.</summary>
    /// <param name="channels">Channels that go in, 3 or 4.</param>
    /// <param name="inkNames">Names of the inks that come out, 1 to 8.</param>
    /// <param name="exact">The exact way; asked for nodes and samples in batches.</param>
    /// <param name="wish">What is tried.</param>
    /// <param name="cancellation">Looked at before each batch.</param>
    /// <exception cref="ArgumentException">Nothing to try.</exception>
    public static LinkGrid Smallest(
        int channels, IReadOnlyList<string> inkNames, ExactInks exact, LinkGridWish wish, CancellationToken cancellation)
    {
        Bounds.Within(channels, 3, 4);
        Bounds.NotEmpty(wish.Bends);
        Tile samples = Samples(channels, Bounds.Within(wish.Samples, 100, 10_000_000));
        double[] wanted = Exactly(exact, samples, inkNames.Count, cancellation);
        LinkGrid? best = null;
        foreach (int steps in Bounds.NotEmpty(wish.Sizes).Order())
        {
            foreach (double bend in wish.Bends)
            {
                LinkGrid grid = Measured(Made(channels, inkNames, exact, steps, bend, cancellation), bend, samples, wanted, wish);
                if (best is null || (grid.MeetsWish, -grid.RmsError).CompareTo((best.MeetsWish, -best.RmsError)) > 0)
                    best = grid;
            }

            if (best is { MeetsWish: true })
                break;
        }

        return best!;
    }

    /// <summary>Fills a table from the exact way.</summary>
    private static LinkTables Made(
        int channels, IReadOnlyList<string> inkNames, ExactInks exact, int steps, double bend, CancellationToken cancellation)
    {
        Bounds.Within(bend, 0.3, 3);
        int inks = inkNames.Count, nodes = (int)Math.Pow(Bounds.Within(steps, 2, channels == 3 ? 129 : 33), channels);
        float[] table = new float[nodes * inks];
        double[] places = new double[Batch * channels], found = new double[Batch * inks];
        for (int first = 0; first < nodes; first += Batch)
        {
            cancellation.ThrowIfCancellationRequested();
            int count = Math.Min(Batch, nodes - first);
            for (int node = 0; node < count; node++)
            {
                for (int channel = channels - 1, rest = first + node; channel >= 0; channel--, rest /= steps)
                    places[(node * channels) + channel] = Math.Pow(rest % steps / (double)(steps - 1), bend);
            }

            exact(places.AsSpan(0, count * channels), found.AsSpan(0, count * inks));
            for (int i = 0; i < count * inks; i++)
                table[(first * inks) + i] = (float)Math.Clamp(found[i], 0, 1);
        }

        float[] curve = bend == 1 ? [0, 1] : [.. Enumerable.Range(0, 4096).Select(i => (float)Math.Pow(i / 4095.0, 1 / bend))];
        return new(channels, inkNames, [.. Enumerable.Repeat<IReadOnlyList<float>>(curve, channels)], steps, table);
    }

    private static LinkGrid Measured(LinkTables table, double bend, Tile samples, double[] wanted, LinkGridWish wish)
    {
        InkLink link = new(table);
        int inks = table.InkNames.Count;
        Tile seen = new(inks, 1, samples.Columns);
        link.Run(samples, seen);
        double squares = 0, most = 0;
        for (int ink = 0; ink < inks; ink++)
        {
            ReadOnlySpan<ushort> row = seen.Row(ink, 0);
            for (int x = 0; x < row.Length; x++)
            {
                double error = Math.Abs((row[x] / 257.0) - (wanted[(x * inks) + ink] * 255));
                squares += error * error;
                most = Math.Max(most, error);
            }
        }

        double rms = Math.Sqrt(squares / wanted.Length);
        return new(table, bend, rms, most, rms <= wish.MostRms && most <= wish.MostMax);
    }

    private static double[] Exactly(ExactInks exact, Tile samples, int inks, CancellationToken cancellation)
    {
        double[] wanted = new double[samples.Columns * inks], channels = new double[Batch * samples.Inks];
        for (int first = 0; first < samples.Columns; first += Batch)
        {
            cancellation.ThrowIfCancellationRequested();
            int count = Math.Min(Batch, samples.Columns - first);
            for (int channel = 0; channel < samples.Inks; channel++)
            {
                for (int x = 0; x < count; x++)
                    channels[(x * samples.Inks) + channel] = samples.Row(channel, 0)[first + x] / (double)Tile.Full;
            }

            exact(channels.AsSpan(0, count * samples.Inks), wanted.AsSpan(first * inks, count * inks));
        }

        return wanted;
    }

    // Multiples of irrational numbers that do not depend on each other fill the cube evenly, the same each time.
    private static Tile Samples(int channels, int count)
    {
        Tile samples = new(channels, 1, count);
        for (int channel = 0; channel < channels; channel++)
        {
            Span<ushort> row = samples.Row(channel, 0);
            for (int x = 0; x < count; x++)
            {
                double part = (x + 1) * Math.Sqrt(Primes[x % 8 == 0 ? 0 : channel]);
                row[x] = (ushort)Math.Round((part - Math.Floor(part)) * Tile.Full);
            }
        }

        return samples;
    }
}
