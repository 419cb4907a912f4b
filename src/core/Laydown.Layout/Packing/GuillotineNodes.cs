namespace Laydown.Layout.Packing;

/// <summary>Bare area kept as the leaves of a tree of edge-to-edge cuts: they share no area. For saw and guillotine.</summary>
/// <remarks>The guillotine method with a rule of choice and a rule of cutting [Jylanki2010].</remarks>
internal sealed class GuillotineNodes(int width, int height, Fit fit, Split split) : IFreeSpace
{
    private readonly List<Box> leaves = [new(0, 0, width, height)];

    /// <summary>A sheet that is cut already: what it has left bare.</summary>
    internal GuillotineNodes(IEnumerable<Box> bare, Fit fit, Split split)
        : this(0, 0, fit, split) => leaves = [.. bare];

    /// <inheritdoc/>
    public bool TryPlace(PieceType type, out Spot spot)
    {
        FitScore best = FitScore.None;
        int leaf = -1;
        spot = default;
        for (int i = 0; i < leaves.Count; i++)
        {
            Box box = leaves[i];
            if (Better(box, type.W, type.H, ref best))
                (leaf, spot) = (i, new(type.Index, new(box.X, box.Y, type.W, type.H), Turned: false));
            if (type.MayTurn && Better(box, type.H, type.W, ref best))
                (leaf, spot) = (i, new(type.Index, new(box.X, box.Y, type.H, type.W), Turned: true));
        }

        if (leaf < 0)
            return false;

        Cut(leaf, spot.Place);
        return true;
    }

    /// <inheritdoc/>
    public IReadOnlyList<Box> Leftovers(int leastSide) =>
        [.. leaves.Where(b => Math.Min(b.W, b.H) >= leastSide).OrderByDescending(b => b.Area).ThenBy(b => b.Y).ThenBy(b => b.X)];

    private bool Better(Box box, int w, int h, ref FitScore best)
    {
        if (w > box.W || h > box.H)
            return false;

        FitScore score = FitScore.Of(fit, box, w, h);
        if (!score.IsBetterThan(best))
            return false;

        best = score;
        return true;
    }

    private void Cut(int leaf, Box piece)
    {
        Box box = leaves[leaf];
        leaves.RemoveAt(leaf);
        bool across = CutsAcross(box.W - piece.W, box.H - piece.H, piece);
        Box above = new(box.X, piece.Top, across ? box.W : piece.W, box.H - piece.H);
        Box beside = new(piece.Right, box.Y, box.W - piece.W, across ? piece.H : box.H);
        if (above is { W: > 0, H: > 0 })
            leaves.Add(above);
        if (beside is { W: > 0, H: > 0 })
            leaves.Add(beside);
    }

    private bool CutsAcross(int restW, int restH, Box piece) => split switch
    {
        Split.ShortRest => restW <= restH,
        Split.LongRest => restW > restH,
        Split.LargeRest => (long)restH * (piece.W + restW) >= (long)restW * (piece.H + restH),
        Split.Across => true,
        _ => false,
    };
}
