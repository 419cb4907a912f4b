namespace Laydown.Layout.Patterns;

/// <summary>Finds the sheet that is worth most at given prices of pieces: bands across the sheet, each filled as well as can be.</summary>
/// <remarks>What a band holds is bounded by what is wanted; the sheet as a whole is held to it by a second look. Not for several threads.</remarks>
internal abstract class Pricing
{
    private readonly int height;
    private readonly float[] stack;
    private readonly int[] last;
    private readonly List<IReadOnlyList<IReadOnlyList<Lie>>> bands = [];
    private int[] left = [];

    private protected Pricing(int height)
    {
        this.height = height;
        stack = new float[height + 1];
        last = new int[height + 1];
    }

    /// <summary>Breadths of bands that can be of use now, and what each is worth.</summary>
    private protected List<(int Breadth, float Worth, int Key)> Bands { get; } = [];

    /// <summary>Worth of the best sheet, or more: what no sheet can exceed at the prices last asked about.</summary>
    internal double Limit { get; private set; }

    /// <summary>The best sheet that holds no more of a piece than wanted; the best up to a second look where the best would hold more.</summary>
    internal CutPlan Best(float[] worth, int[] most)
    {
        Fill(worth, most);
        Stack();
        Limit = stack[height];
        if (Whole(most) is CutPlan plan)
            return plan;

        // The best sheet holds too much of a piece: take band after band, what is left judged by the sheet without bounds.
        float[] rest = [.. stack];
        left = [.. most];
        bands.Clear();
        int y = height;
        while (Choice(rest, y) is int choice and >= 0)
        {
            y -= Bands[choice].Breadth;
            Keep(Bands[choice].Key, left);
            Fill(worth, left);
        }

        return Plan(most.Length);
    }

    /// <summary>Works out the bands.</summary>
    private protected abstract void Fill(float[] worth, int[] most);

    /// <summary>What a band holds.</summary>
    private protected abstract IReadOnlyList<IReadOnlyList<Lie>> Trace(int key);

    private int Choice(float[] rest, int y)
    {
        (int choice, float value) = (-1, 0);
        for (int b = 0; b < Bands.Count; b++)
            if (Bands[b].Breadth <= y && Bands[b].Worth > 0 && Bands[b].Worth + rest[y - Bands[b].Breadth] > value)
                (choice, value) = (b, Bands[b].Worth + rest[y - Bands[b].Breadth]);
        return choice;
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

    private CutPlan? Whole(int[] most)
    {
        bands.Clear();
        left = [.. most];
        for (int y = height; y > 0 && last[y] >= 0; y -= Bands[last[y]].Breadth)
            if (!Keep(Bands[last[y]].Key, left))
                return null;
        return Plan(most.Length);
    }

    private bool Keep(int key, int[] remaining)
    {
        IReadOnlyList<IReadOnlyList<Lie>> band = Trace(key);
        bands.Add(band);
        bool enough = true;
        foreach (Lie lie in band.SelectMany(c => c))
            enough &= --remaining[lie.Piece] >= 0;
        return enough;
    }

    private CutPlan Plan(int pieces)
    {
        int[] counts = new int[pieces];
        foreach (Lie lie in bands.SelectMany(b => b.SelectMany(c => c)))
            counts[lie.Piece]++;
        return new(counts, [.. bands]);
    }
}
