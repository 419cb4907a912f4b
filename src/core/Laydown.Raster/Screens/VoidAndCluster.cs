namespace Laydown.Raster.Screens;

/// <summary>Makes threshold arrays by void-and-cluster. [Ulichney1993]</summary>
/// <remarks>
/// Each dot stands for a Gaussian hill (σ 1.5 px) on a torus. A random tenth of the dots is evened out by moving the dot with the highest
/// ground to the
/// lowest bare place until that changes nothing; ranks below are given by taking away the highest dot again and again, ranks above by
/// filling the lowest place.
/// Heights are whole numbers, so the same seed gives the same array everywhere; the least bits are chance and settle ties.
/// Beyond one half the published way looks for the tightest cluster of bare places: on a torus with one filter that is the same place.
/// An array made beside others sees their dots of the same rank as lower hills (σ 1 px). Measured over six tones with weight 0.1 and three
/// others: what an eye
/// sees of a pair falls to 0.94–1.00 of that of two arrays from unlike seeds (most in light tones), while an ink alone becomes up to 4 %
/// worse. Weight 0.2 gains
/// more for one pair (0.93) but loses in mid-tones where three are minded (1.04); wider hills gain less; a shifted copy gains nothing; one
/// array in intervals
/// reaches 0.67–0.81 but costs one ink up to 22 %.
/// Two lists of rows (highest and lowest place of each) make a step cost 21 rows instead of 256. Measured: 0.3 s for an array alone, 1 s
/// beside three others.
/// </remarks>
public static class VoidAndCluster
{
    private const int Side = ThresholdArray.Side;
    private const double Sigma = 1.5;
    private const double CompanionSigma = 1;
    private const int Unit = 1 << 20;

    /// <summary>Makes an array.</summary>
    /// <param name="seed">Starts the random order; the same seed gives the same array.</param>
    /// <param name="besides">Arrays it is to go well with: places where these set dots of the same rank count as partly taken.</param>
    /// <param name="weight">How much, 0 (not at all) to 1 (as its own dots).</param>
    /// <param name="cancellation">Looked at from time to time.</param>
    public static ThresholdArray Make(int seed, IReadOnlyList<ThresholdArray> besides, double weight, CancellationToken cancellation)
    {
        int count = Side * Side / 10;
        DotField field = new(Hill(1, Sigma), seed);
        Companions companions = new(besides, Hill(weight, CompanionSigma));
        companions.Set(field, 0, count);
        Start(field, seed, count);
        Even(field, cancellation);

        ushort[] ranks = new ushort[Side * Side];
        int[] prototype = field.Places();
        for (int rank = count - 1; rank >= 0; rank--)
        {
            int place = field.Highest();
            field.Change(place, -1);
            ranks[place] = (ushort)rank;
            companions.Set(field, rank, -1);
        }

        // Back to the evened start, then upwards.
        companions.Set(field, 0, count);
        foreach (int place in prototype)
            field.Change(place, 1);
        for (int rank = count; rank < Side * Side; rank++)
        {
            if ((rank & 1023) == 0)
                cancellation.ThrowIfCancellationRequested();
            int place = field.Lowest();
            field.Change(place, 1);
            ranks[place] = (ushort)rank;
            companions.Set(field, rank, 1);
        }

        return new(ranks);
    }

    private static void Start(DotField field, int seed, int count)
    {
        SeededChance chance = new((uint)seed);
        while (count > 0)
        {
            int place = (int)(chance.Next() % (Side * Side));
            if (field.Has(place))
                continue;
            field.Change(place, 1);
            count--;
        }
    }

    private static void Even(DotField field, CancellationToken cancellation)
    {
        // The sum of heights falls with each move, so it ends; the bound only says so.
        for (int move = 0; move < 100 * Side * Side; move++)
        {
            if ((move & 1023) == 0)
                cancellation.ThrowIfCancellationRequested();
            int from = field.Highest();
            field.Change(from, -1);
            int to = field.Lowest();
            field.Change(to, 1);
            if (from == to)
                return;
        }
    }

    private static int[] Hill(double weight, double sigma)
    {
        int reach = DotField.Reach, width = (2 * reach) + 1;
        int[] hill = new int[width * width];
        for (int y = -reach; y <= reach; y++)
        {
            for (int x = -reach; x <= reach; x++)
            {
                double height = Math.Exp(-((x * x) + (y * y)) / (2 * sigma * sigma));
                hill[((y + reach) * width) + x + reach] = (int)Math.Round(weight * Unit * height);
            }
        }

        return hill;
    }

    // The dots of other arrays, in their order.
    private sealed class Companions
    {
        private readonly int[][] orders;
        private readonly int[] hill;

        public Companions(IReadOnlyList<ThresholdArray> arrays, int[] hill)
        {
            this.hill = hill;
            orders = arrays.Select(a =>
            {
                int[] order = new int[Side * Side];
                for (int place = 0; place < order.Length; place++)
                    order[a.Ranks[place]] = place;
                return order;
            }).ToArray();
        }

        // The dots of ranks from first on appear (count above 0), or the one of that rank goes (−1).
        public void Set(DotField field, int first, int count)
        {
            foreach (int[] order in orders)
            {
                for (int rank = first; rank < first + Math.Abs(count); rank++)
                    field.Raise(order[rank], hill, Math.Sign(count));
            }
        }
    }
}
