namespace Laydown.Layout.Guillotine;

/// <summary>A node of a tree of cuts: a bare rest, a piece, or a part that is cut further.</summary>
/// <remarks>A part cut upright has its children side by side, each as high as itself; else they lie one above the other. At most one child is bare.</remarks>
internal struct CutNode
{
    /// <summary>No node.</summary>
    public const int None = -1;

    /// <summary>The part it was cut from; <see cref="None"/> for the root of a sheet.</summary>
    public int Parent;

    /// <summary>First child.</summary>
    public int First;

    /// <summary>Next child of the same parent; of a root the next root of its sheet; of a node not in use the next of those.</summary>
    public int Next;

    /// <summary>Child before it.</summary>
    public int Prev;

    /// <summary>The bare child.</summary>
    public int Rest;

    /// <summary>Width.</summary>
    public int W;

    /// <summary>Height.</summary>
    public int H;

    /// <summary>Worth of a bare rest that can take a piece.</summary>
    public double Worth;

    /// <summary>Type of the piece.</summary>
    public int Type;

    /// <summary>Slot of its sheet.</summary>
    public int Sheet;

    /// <summary>Where it stands in the list of bare rests or of nodes that can be taken out; −1 for a rest that takes no piece.</summary>
    public int Slot;

    /// <summary>What it is.</summary>
    public CutKind Kind;

    /// <summary>Whether its children lie side by side.</summary>
    public bool Upright;

    /// <summary>Whether the piece lies turned.</summary>
    public bool Turned;

    /// <summary>How many stages of cuts freed it.</summary>
    public short Stage;

    /// <summary>W × H.</summary>
    public readonly long Area => (long)W * H;
}
