namespace Laydown.Layout.Patterns;

/// <summary>Finds the sheet that is worth most at given prices of pieces: bands across the sheet, each filled as well as can be.</summary>
/// <remarks>
/// The tables bound a piece within a strip or column only. Where the best sheet holds more of a piece than wanted, prices of such pieces are
/// lowered step by step (the subgradient method of Held and Karp [HeldKarp1971]): that gives sheets nearly within bounds, mended by leaving out
/// and filling up, and a limit for all sheets within bounds. Not for several threads.
/// </remarks>
internal abstract class Pricing
{
    private const int MostSteps = 16;

    private readonly int width;
    private readonly int height;
    private readonly bool piles;
    private readonly Lie[] lies;
    private readonly float[] stack;
    private readonly int[] last;
    private readonly List<(int Breadth, List<List<Lie>> Columns)> bands = [];
    private int[] left = [];
    private float[] lowered = [];
    private double[] fine = [];

    /// <param name="lies">Ways to lie that fit.</param>
    /// <param name="width">Width of the sheet in steps.</param>
    /// <param name="height">Height of the sheet in steps.</param>
    /// <param name="piles">Whether a column may hold more than one piece.</param>
    private protected Pricing(IReadOnlyList<Lie> lies, int width, int height, bool piles)
    {
        (this.width, this.height, this.piles) = (width, height, piles);
        this.lies = [.. lies];
        stack = new float[height + 1];
        last = new int[height + 1];
    }

    /// <summary>Breadths of bands that can be of use now, and what each is worth.</summary>
    private protected List<(int Breadth, float Worth, int Key)> Bands { get; } = [];

    /// <summary>What no sheet within bounds can exceed at the prices last asked about.</summary>
    internal double Limit { get; private set; }

    /// <summary>The best sheet found that holds no more of a piece than wanted.</summary>
    /// <param name="worth">Worth of a copy, by piece.</param>
    /// <param name="most">Most copies on the sheet, by piece.</param>
    /// <param name="enough">A sheet worth more, or the proof that there is none, ends the search.</param>
    internal CutPlan Best(float[] worth, int[] most, double enough)
    {
        lowered = [.. worth];
        fine = new double[worth.Length];
        Limit = double.MaxValue;
        (CutPlan? best, double bestWorth) = (null, -1);
        double pace = 1;
        for (int step = 0; step < MostSteps; step++)
        {
            Fill(lowered, most);
            Stack();
            int[] counts = Trace(most.Length);
            double limit = stack[height];
            for (int p = 0; p < fine.Length; p++)
                limit += fine[p] * most[p];
            (pace, Limit) = limit < Limit ? (pace, limit) : (pace * 0.7, Limit);

            bool whole = Whole(counts, most);
            Mend(worth, most);
            CutPlan plan = Plan(most.Length);
            double value = 0;
            for (int p = 0; p < worth.Length; p++)
                value += plan.Counts[p] * (double)worth[p];
            if (value > bestWorth)
                (best, bestWorth) = (plan, value);
            if ((whole && step == 0) || bestWorth > enough || Limit <= enough || !Lower(worth, counts, most, pace * Math.Max(1e-3 * limit, limit - bestWorth)))
                break;
        }

        return best!;
    }

    /// <summary>Works out the bands.</summary>
    private protected abstract void Fill(float[] worth, int[] most);

    /// <summary>What a band holds.</summary>
    private protected abstract List<List<Lie>> Trace(int breadth, int key);

    private static bool Whole(int[] counts, int[] most)
    {
        for (int p = 0; p < counts.Length; p++)
            if (counts[p] > most[p])
                return false;
        return true;
    }

    // Pieces held too often become cheaper, pieces made cheaper and held too seldom dearer again.
    private bool Lower(float[] worth, int[] counts, int[] most, double distance)
    {
        double square = 0;
        for (int p = 0; p < counts.Length; p++)
            if (counts[p] > most[p] || fine[p] > 0)
                square += Math.Pow(counts[p] - most[p], 2);
        if (square == 0)
            return false;
        for (int p = 0; p < counts.Length; p++)
            if (counts[p] > most[p] || fine[p] > 0)
            {
                fine[p] = Math.Clamp(fine[p] + (distance / square * (counts[p] - most[p])), 0, worth[p]);
                lowered[p] = (float)(worth[p] - fine[p]);
            }

        return true;
    }

    private void Stack()
    {
        Array.Clear(stack);
        Array.Fill(last, -1);
        for (int b = 0; b < Bands.Count; b++)
        {
            (int breadth, float worth, _) = Bands[b];
            for (int y = breadth; y <= height; y++)
                if (stack[y - breadth] + worth > stack[y])
                    (stack[y], last[y]) = (stack[y - breadth] + worth, b);
        }
    }

    private int[] Trace(int pieces)
    {
        bands.Clear();
        int[] counts = new int[pieces];
        for (int y = height; y > 0 && last[y] >= 0; y -= Bands[last[y]].Breadth)
        {
            (int breadth, _, int key) = Bands[last[y]];
            bands.Add((breadth, Trace(breadth, key)));
            foreach (Lie lie in bands[^1].Columns.SelectMany(c => c))
                counts[lie.Piece]++;
        }

        return counts;
    }

    // What is too much is left out, what then has room goes in, the dearest by area first.
    private void Mend(float[] worth, int[] most)
    {
        left = [.. most];
        foreach ((_, List<List<Lie>> columns) in bands)
        {
            foreach (List<Lie> column in columns)
                column.RemoveAll(l => --left[l.Piece] < 0);
            columns.RemoveAll(c => c.Count == 0);
            for (int p = 0; p < left.Length; p++)
                left[p] = Math.Max(0, left[p]);
        }

        Lie[] wanted = [.. lies.Where(l => left[l.Piece] > 0 && worth[l.Piece] > 0).OrderByDescending(l => worth[l.Piece] / ((double)l.Along * l.Across))];
        if (wanted.Length == 0)
            return;
        foreach ((int breadth, List<List<Lie>> columns) in bands)
        {
            if (piles)
                foreach (List<Lie> column in columns)
                    Pile(column, wanted, breadth, column.Max(l => l.Along));
            for (int rest = width - columns.Sum(c => c.Max(l => l.Along)); ;)
            {
                int index = Array.FindIndex(wanted, l => left[l.Piece] > 0 && l.Along <= rest && l.Across <= breadth);
                if (index < 0)
                    break;
                List<Lie> column = [wanted[index]];
                left[wanted[index].Piece]--;
                if (piles)
                    Pile(column, wanted, breadth, wanted[index].Along);
                columns.Add(column);
                rest -= wanted[index].Along;
            }
        }
    }

    private void Pile(List<Lie> column, Lie[] wanted, int breadth, int along)
    {
        int rest = breadth - column.Sum(l => l.Across);
        foreach (Lie lie in wanted)
            while (left[lie.Piece] > 0 && lie.Along <= along && lie.Across <= rest)
            {
                column.Add(lie);
                left[lie.Piece]--;
                rest -= lie.Across;
            }
    }

    private CutPlan Plan(int pieces)
    {
        int[] counts = new int[pieces];
        foreach (Lie lie in bands.SelectMany(b => b.Columns.SelectMany(c => c)))
            counts[lie.Piece]++;
        return new(counts, [.. bands.Where(b => b.Columns.Count > 0).Select(b => b.Columns.Select(c => (IReadOnlyList<Lie>)[.. c]).ToArray())]);
    }
}
