namespace Laydown.Layout.Guillotine;

/// <summary>Nodes of all trees of a forest and how they hang together; those given back are taken again first.</summary>
internal sealed class CutPool
{
    private CutNode[] nodes = new CutNode[256];
    private int used, spare = CutNode.None;

    /// <summary>All nodes; those not in use have no width.</summary>
    internal ReadOnlySpan<CutNode> All => nodes.AsSpan(0, used);

    internal ref CutNode this[int node] => ref nodes[node];

    internal void CopyFrom(CutPool other)
    {
        if (nodes.Length < other.used)
            nodes = new CutNode[other.nodes.Length];
        Array.Copy(other.nodes, nodes, other.used);
        (used, spare) = (other.used, other.spare);
    }

    /// <summary>A node not in use; references to nodes may be void afterwards.</summary>
    internal int Take()
    {
        if (spare >= 0)
        {
            int node = spare;
            spare = nodes[node].Next;
            return node;
        }

        if (used == nodes.Length)
            Array.Resize(ref nodes, nodes.Length * 2);
        return used++;
    }

    /// <summary>A bare node cut from another, not yet hooked.</summary>
    /// <param name="of">What it is cut from.</param>
    /// <param name="parent">Its parent.</param>
    /// <param name="stage">Stages of cuts that free it.</param>
    /// <param name="upright">Whether the cut goes upright.</param>
    /// <param name="size">Its size across the cut; the other is that of what it is cut from.</param>
    internal int Cut(int of, int parent, short stage, bool upright, int size)
    {
        int node = Take();
        nodes[node] = new()
        {
            Parent = parent,
            First = CutNode.None,
            Next = CutNode.None,
            Prev = CutNode.None,
            Rest = CutNode.None,
            W = upright ? size : nodes[of].W,
            H = upright ? nodes[of].H : size,
            Sheet = nodes[of].Sheet,
            Slot = -1,
            Kind = CutKind.Bare,
            Stage = stage,
        };
        return node;
    }

    /// <summary>Gives a node back.</summary>
    internal void Give(int node)
    {
        (nodes[node].Next, nodes[node].W) = (spare, 0);
        spare = node;
    }

    internal void Hook(int child, int parent)
    {
        int first = nodes[parent].First;
        nodes[child].Next = first;
        nodes[child].Prev = CutNode.None;
        if (first >= 0)
            nodes[first].Prev = child;
        nodes[parent].First = child;
    }

    internal void Unhook(int child)
    {
        (int prev, int next) = (nodes[child].Prev, nodes[child].Next);
        if (prev >= 0)
            nodes[prev].Next = next;
        else
            nodes[nodes[child].Parent].First = next;
        if (next >= 0)
            nodes[next].Prev = prev;
    }

    /// <summary>Whether a part has no children but this one and perhaps the bare one.</summary>
    internal bool IsOnly(int child, int parent)
    {
        int first = nodes[parent].First, rest = nodes[parent].Rest;
        int next = nodes[first].Next;
        return next == CutNode.None
            ? first == child
            : nodes[next].Next == CutNode.None && ((first == child && next == rest) || (next == child && first == rest));
    }
}
