namespace Laydown.Layout.FreePacking;

/// <summary>A sheet being filled: what lies on it, and what is bare as all rectangles that cannot grow any further.</summary>
/// <remarks>The method of maximal rectangles [Jylanki2010]. Arrays grow when they must and are then used again: nothing is allocated while a search goes on.</remarks>
internal sealed class FreeBoard
{
    private Lying[] spots = new Lying[16];
    private Bare[] rests = new Bare[32];
    private Bare[] parts = new Bare[32];
    private int restCount;

    /// <summary>Index of its stock; −1 for a sheet not in use.</summary>
    internal int Stock { get; private set; } = -1;

    internal int Count { get; private set; }

    /// <summary>Area of what lies on it.</summary>
    internal long Used { get; private set; }

    /// <summary>Largest width and height of the bare rectangles: a quick refusal.</summary>
    internal int MostW { get; private set; }

    /// <inheritdoc cref="MostW"/>
    internal int MostH { get; private set; }

    internal ReadOnlySpan<Lying> Spots => spots.AsSpan(0, Count);

    internal ReadOnlySpan<Bare> Rests => rests.AsSpan(0, restCount);

    /// <summary>An unused sheet of a stock.</summary>
    internal void Open(FreeModel model, int stock)
    {
        (Stock, Count, Used) = (stock, 0, 0);
        Clear(model);
    }

    /// <summary>No sheet at all.</summary>
    internal void Close() => (Stock, Count, Used, restCount, MostW, MostH) = (-1, 0, 0, 0, 0, 0);

    /// <summary>One bare rectangle and nothing else.</summary>
    internal void Bare(in Bare whole)
    {
        rests[0] = whole;
        (restCount, MostW, MostH) = (1, whole.W, whole.H);
    }

    internal void CopyFrom(FreeBoard other)
    {
        (Stock, Count, Used, restCount, MostW, MostH) = (other.Stock, other.Count, other.Used, other.restCount, other.MostW, other.MostH);
        if (spots.Length < Count)
            spots = new Lying[other.spots.Length];
        if (rests.Length < restCount)
            rests = new Bare[other.rests.Length];
        other.spots.AsSpan(0, Count).CopyTo(spots);
        other.rests.AsSpan(0, restCount).CopyTo(rests);
    }

    /// <summary>Puts a piece down; its place must be bare.</summary>
    internal void Add(FreeModel model, in Lying spot)
    {
        if (Count == spots.Length)
            Array.Resize(ref spots, Count * 2);
        spots[Count++] = spot;
        Used += spot.Place.W * (long)spot.Place.H;
        Cut(spot.Place, model.LeastW, model.LeastH);
    }

    /// <summary>Takes off the pieces that are marked, and makes the bare rectangles anew.</summary>
    internal void Remove(FreeModel model, ReadOnlySpan<bool> marked)
    {
        int kept = 0;
        Used = 0;
        for (int i = 0; i < Count; i++)
            if (!marked[i])
                spots[kept++] = spots[i];

        Count = kept;
        Clear(model);
        for (int i = 0; i < Count; i++)
        {
            Used += spots[i].Place.W * (long)spots[i].Place.H;
            Cut(spots[i].Place, model.LeastW, model.LeastH);
        }
    }

    /// <summary>Cuts a place out of every bare rectangle it touches; rests too narrow or too low for any piece are left out.</summary>
    internal void Cut(in Bare taken, int leastW, int leastH)
    {
        int partCount = 0;
        for (int i = 0; i < restCount;)
        {
            Bare b = rests[i];
            if (taken.X >= b.Right || b.X >= taken.Right || taken.Y >= b.Top || b.Y >= taken.Top)
            {
                i++;
                continue;
            }

            if (partCount + 4 > parts.Length)
                Array.Resize(ref parts, parts.Length * 2);
            if (taken.X - b.X >= leastW)
                parts[partCount++] = b with { Right = taken.X };
            if (b.Right - taken.Right >= leastW)
                parts[partCount++] = b with { X = taken.Right };
            if (taken.Y - b.Y >= leastH)
                parts[partCount++] = b with { Top = taken.Y };
            if (b.Top - taken.Top >= leastH)
                parts[partCount++] = b with { Y = taken.Top };
            rests[i] = rests[--restCount];
        }

        Keep(partCount);
    }

    private void Clear(FreeModel model)
    {
        ReadOnlySpan<Bare> bare = model.BareOf(Stock);
        if (rests.Length < bare.Length)
            rests = new Bare[bare.Length * 2];
        bare.CopyTo(rests);
        restCount = bare.Length;
        Measure();
    }

    // Only a part can be held by another rectangle: what was not touched was not held before.
    private void Keep(int partCount)
    {
        int untouched = restCount;
        for (int i = 0; i < partCount; i++)
        {
            bool held = false;
            for (int j = 0; j < untouched && !held; j++)
                held = rests[j].Holds(parts[i]);
            for (int j = 0; j < partCount && !held; j++)
                held = j != i && parts[j].Holds(parts[i]) && (j < i || parts[i] != parts[j]);
            if (held)
                continue;

            if (restCount == rests.Length)
                Array.Resize(ref rests, restCount * 2);
            rests[restCount++] = parts[i];
        }

        Measure();
    }

    private void Measure()
    {
        (int w, int h) = (0, 0);
        for (int i = 0; i < restCount; i++)
        {
            w = Math.Max(w, rests[i].W);
            h = Math.Max(h, rests[i].H);
        }

        (MostW, MostH) = (w, h);
    }
}
