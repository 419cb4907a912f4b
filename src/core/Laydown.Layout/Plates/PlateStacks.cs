using Laydown.Layout.Packing;

namespace Laydown.Layout.Plates;

/// <summary>Panes by stack, and which panes may share a cell.</summary>
internal sealed class PlateStacks
{
    internal PlateStacks(IReadOnlyList<PlateItem> items)
    {
        Width = [.. items.Select(i => i.Width)];
        Height = [.. items.Select(i => i.Height)];
        Area = [.. items.Select(i => i.Area)];
        int[] names = [.. items.Select(i => i.Stack).Distinct().Order()];
        StackOf = [.. items.Select(i => Array.BinarySearch(names, i.Stack))];
        Stacks = [.. names.Select((_, s) => Enumerable.Range(0, items.Count).Where(i => StackOf[i] == s).ToArray())];
        PlaceOf = new int[items.Count];
        foreach (int[] stack in Stacks)
            for (int k = 0; k < stack.Length; k++)
                PlaceOf[stack[k]] = k;
        int[] panes = [.. Enumerable.Range(0, items.Count)];
        Partners = [.. panes.Select(i => panes.Where(j => j != i && Share(items[i], items[j]) && (StackOf[j] != StackOf[i] || PlaceOf[j] == PlaceOf[i] + 1)).ToArray())];
        Chance chance = new(items.Count);
        Marks = [.. items.Select(_ => ((ulong)chance.Below(int.MaxValue) << 33) ^ ((ulong)chance.Below(int.MaxValue) << 2) ^ (ulong)chance.Below(4))];
    }

    internal int[] Width { get; }

    internal int[] Height { get; }

    internal long[] Area { get; }

    /// <summary>Stack by pane.</summary>
    internal int[] StackOf { get; }

    /// <summary>Place in its stack by pane.</summary>
    internal int[] PlaceOf { get; }

    /// <summary>Panes by stack, in order.</summary>
    internal int[][] Stacks { get; }

    /// <summary>Panes with a side in common that may lie above a pane in one cell.</summary>
    internal int[][] Partners { get; }

    /// <summary>Marks whose sum tells a set of panes.</summary>
    internal ulong[] Marks { get; }

    private static bool Share(PlateItem a, PlateItem b) => a.Width == b.Width || a.Width == b.Height || a.Height == b.Width || a.Height == b.Height;
}
