namespace Laydown.Layout.Guillotine;

/// <summary>A place for a piece.</summary>
internal struct CutChoice
{
    /// <summary>Worth of rests lost.</summary>
    public double Loss;

    /// <summary>The rest it is cut from; none where there is no place.</summary>
    public int Node;

    /// <summary>Whether the piece lies turned.</summary>
    public bool Turned;

    /// <summary>Whether the first cut goes upright.</summary>
    public bool Upright;

    internal static CutChoice None => new() { Loss = double.PositiveInfinity, Node = CutNode.None };

    internal void Keep(double loss, int node, bool turned, bool upright)
    {
        if (loss < Loss)
            (Loss, Node, Turned, Upright) = (loss, node, turned, upright);
    }
}
