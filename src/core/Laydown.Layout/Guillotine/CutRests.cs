using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Laydown.Layout.Guillotine;

/// <summary>The bare rests that can take a piece, with their sizes side by side, so that eight of them are looked at in one step.</summary>
/// <param name="pool">The nodes.</param>
internal sealed class CutRests(CutPool pool)
{
    /// <summary>Rests looked at in one step.</summary>
    internal const int Step = 8;

    private int[] nodes = new int[16 * Step], widths = new int[16 * Step], heights = new int[16 * Step];
    private int count;

    internal ReadOnlySpan<int> Nodes => nodes.AsSpan(0, count);

    internal void CopyFrom(CutRests other)
    {
        int whole = RoundedUp(other.count);
        if (nodes.Length < whole)
            (nodes, widths, heights) = (new int[other.nodes.Length], new int[other.nodes.Length], new int[other.nodes.Length]);
        Array.Copy(other.nodes, nodes, other.count);
        Array.Copy(other.widths, widths, whole);
        Array.Copy(other.heights, heights, whole);

        // Behind the last rest all sizes are 0: nothing fits there.
        if (RoundedUp(count) is var before && before > whole)
        {
            widths.AsSpan(whole, before - whole).Clear();
            heights.AsSpan(whole, before - whole).Clear();
        }

        count = other.count;
    }

    internal void Add(int node)
    {
        if (count == nodes.Length)
        {
            Array.Resize(ref nodes, 2 * count);
            Array.Resize(ref widths, 2 * count);
            Array.Resize(ref heights, 2 * count);
        }

        ref CutNode n = ref pool[node];
        (nodes[count], widths[count], heights[count]) = (node, n.W, n.H);
        n.Slot = count++;
    }

    internal void Remove(int node)
    {
        int slot = pool[node].Slot;
        if (slot < 0)
            return;

        int last = --count;
        (nodes[slot], widths[slot], heights[slot]) = (nodes[last], widths[last], heights[last]);
        (widths[last], heights[last]) = (0, 0);
        pool[nodes[slot]].Slot = slot;
        pool[node].Slot = -1;
    }

    /// <summary>Which of eight rests take a piece, a bit for each.</summary>
    /// <param name="at">First of them; a multiple of eight.</param>
    /// <param name="w">Width of the piece.</param>
    /// <param name="h">Height of the piece.</param>
    /// <param name="turns">Whether it may lie turned.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal uint Fitting(int at, int w, int h, bool turns)
    {
        var width = Vector256.Create<int>(widths.AsSpan(at, Step));
        var height = Vector256.Create<int>(heights.AsSpan(at, Step));
        Vector256<int> one = Vector256.Create(w - 1), other = Vector256.Create(h - 1);
        Vector256<int> fits = Vector256.GreaterThan(width, one) & Vector256.GreaterThan(height, other);
        if (turns)
            fits |= Vector256.GreaterThan(width, other) & Vector256.GreaterThan(height, one);
        return fits.ExtractMostSignificantBits();
    }

    private static int RoundedUp(int count) => (count + Step - 1) / Step * Step;
}
