namespace Laydown.Layout.Packing;

/// <summary>Bare area kept as all rectangles that cannot grow any further; they may share area. For free cutting.</summary>
/// <remarks>The method of maximal rectangles [Jylanki2010].</remarks>
internal sealed class MaximalRectangles(int width, int height, Fit fit) : IFreeSpace
{
    private List<Box> bare = [new(0, 0, width, height)];
    private List<Box> next = [];

    /// <inheritdoc/>
    public bool TryPlace(PieceType type, out Spot spot)
    {
        FitScore best = FitScore.None;
        spot = default;
        foreach (Box box in bare)
        {
            Try(box, type.W, type.H, turned: false, type, ref best, ref spot);
            if (type.MayTurn)
                Try(box, type.H, type.W, turned: true, type, ref best, ref spot);
        }

        if (best == FitScore.None)
            return false;

        Take(spot.Place);
        return true;
    }

    /// <inheritdoc/>
    public IReadOnlyList<Box> Leftovers(int leastSide)
    {
        // Take the largest bare rectangle that reaches an edge of the sheet, then look again at what is left.
        MaximalRectangles rest = new(width, height, fit) { bare = [.. bare] };
        List<Box> found = [];
        while (rest.LargestAtEdge(leastSide) is Box box)
        {
            found.Add(box);
            rest.Take(box);
        }

        return found;
    }

    /// <summary>Takes away a place that is covered already, inside the sheet or not.</summary>
    internal void Cover(Box covered) => Take(covered);

    private Box? LargestAtEdge(int leastSide)
    {
        Box? largest = null;
        foreach (Box b in bare)
        {
            bool atEdge = b.X == 0 || b.Y == 0 || b.Right == width || b.Top == height;
            if (atEdge && Math.Min(b.W, b.H) >= leastSide && (largest is null || b.Area > largest.Value.Area))
                largest = b;
        }

        return largest;
    }

    private void Try(Box box, int w, int h, bool turned, PieceType type, ref FitScore best, ref Spot spot)
    {
        if (w > box.W || h > box.H)
            return;

        FitScore score = FitScore.Of(fit, box, w, h);
        if (score.IsBetterThan(best))
        {
            best = score;
            spot = new(type.Index, new(box.X, box.Y, w, h), turned);
        }
    }

    private void Take(Box taken)
    {
        // Cut the taken place out of every bare rectangle it touches; only these pieces can be held by others.
        next.Clear();
        int untouched = 0;
        foreach (Box box in bare)
            if (!box.Overlaps(taken))
                next.Add(box);

        untouched = next.Count;
        foreach (Box box in bare)
            if (box.Overlaps(taken))
                AddAround(box, taken);

        DropHeld(untouched);
        (bare, next) = (next, bare);
    }

    private void AddAround(Box box, Box taken)
    {
        if (taken.X > box.X)
            next.Add(box with { W = taken.X - box.X });
        if (taken.Right < box.Right)
            next.Add(box with { X = taken.Right, W = box.Right - taken.Right });
        if (taken.Y > box.Y)
            next.Add(box with { H = taken.Y - box.Y });
        if (taken.Top < box.Top)
            next.Add(box with { Y = taken.Top, H = box.Top - taken.Top });
    }

    private void DropHeld(int from)
    {
        for (int i = next.Count - 1; i >= from; i--)
        {
            bool held = false;
            for (int j = 0; j < next.Count && !held; j++)
                held = j != i && next[j].Holds(next[i]);

            if (held)
                next.RemoveAt(i);
        }
    }
}
