namespace Laydown.Layout.Guillotine;

/// <summary>Pieces and parts: what can be taken out of a forest.</summary>
/// <param name="pool">The nodes.</param>
internal sealed class CutLive(CutPool pool)
{
    private int[] nodes = new int[256];
    private int count;

    internal ReadOnlySpan<int> Nodes => nodes.AsSpan(0, count);

    internal void CopyFrom(CutLive other)
    {
        if (nodes.Length < other.count)
            nodes = new int[other.nodes.Length];
        Array.Copy(other.nodes, nodes, other.count);
        count = other.count;
    }

    internal void Add(int node)
    {
        if (count == nodes.Length)
            Array.Resize(ref nodes, 2 * count);
        pool[node].Slot = count;
        nodes[count++] = node;
    }

    internal void Remove(int node)
    {
        int slot = pool[node].Slot, last = nodes[--count];
        nodes[slot] = last;
        pool[last].Slot = slot;
        pool[node].Slot = -1;
    }
}
