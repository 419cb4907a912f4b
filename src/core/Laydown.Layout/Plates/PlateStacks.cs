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
        Before = [.. Stacks.Select((_, s) => LastAlike(s))];
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

    /// <summary>By stack the last one before it that is alike, pane by pane, or −1: of stacks alike the earlier one is begun first.</summary>
    internal int[] Before { get; }

    /// <summary>Panes with a side in common that may lie above a pane in one cell.</summary>
    internal int[][] Partners { get; }

    /// <summary>Marks whose sum tells a set of panes.</summary>
    internal ulong[] Marks { get; }

    /// <summary>Whether a stack waits for one like it: taking its first pane would only give again what taking the other's gives.</summary>
    /// <param name="stack">The stack.</param>
    /// <param name="taken">Panes taken by stack.</param>
    internal bool Waits(int stack, ReadOnlySpan<short> taken) => taken[stack] == 0 && Before[stack] >= 0 && taken[Before[stack]] == 0;

    private int LastAlike(int stack)
    {
        for (int other = stack - 1; other >= 0; other--)
            if (Stacks[other].Select(i => (Width[i], Height[i])).SequenceEqual(Stacks[stack].Select(i => (Width[i], Height[i]))))
                return other;
        return -1;
    }

    private static bool Share(PlateItem a, PlateItem b) => a.Width == b.Width || a.Width == b.Height || a.Height == b.Width || a.Height == b.Height;
}
