using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Hands;

/// <summary>One way of finishing: what is put onto the sheets with locked pieces, then onto bare ones.</summary>
/// <param name="OnFrames">New pieces of each sheet with locked ones.</param>
/// <param name="Bare">Sheets begun.</param>
/// <param name="Left">Copies that found no place; only on a roll, or on sheets whose picture is printed several times.</param>
internal sealed record FinishFill(IReadOnlyList<IReadOnlyList<Spot>> OnFrames, IReadOnlyList<FilledSheet> Bare, int Left)
{
    /// <summary>Fills in a given order.</summary>
    internal static FinishFill Of(FinishTable table, IReadOnlyList<Entry> order, Fit fit, Split split, CancellationToken stop)
    {
        int[] left = [.. order.Select(e => e.Copies)];
        List<IReadOnlyList<Spot>> onFrames = [];
        foreach (FinishFrame frame in table.Frames)
            onFrames.Add(OnFrame(table, frame, order, left, fit, split));

        if (table.Rules.IsRoll)
            return new(onFrames, [], left.Sum());
        IReadOnlyList<Entry> rest = [.. order.Select((e, i) => e with { Copies = left[i] }).Where(e => e.Copies > 0)];
        return new(onFrames, rest.Count == 0 ? [] : SheetFill.All(table.Types, rest, () => BareSpace(table, fit, split), stop), 0);
    }

    private static List<Spot> OnFrame(FinishTable table, FinishFrame frame, IReadOnlyList<Entry> order, int[] left, Fit fit, Split split)
    {
        // A picture printed several times takes a piece only where as many copies are wanted, in whichever steps of the order they come.
        int repeats = frame.Kept.Repeats;
        int[] ofType = new int[table.Types.Count];
        for (int i = 0; i < left.Length; i++)
            ofType[order[i].Type] += left[i];
        IReadOnlyList<Entry> entries = repeats == 1
            ? [.. order.Select((e, i) => e with { Copies = left[i] })]
            : [.. order.Select(e => e.Type).Distinct().Select(t => new Entry(t, ofType[t] / repeats))];
        List<Spot> laid = SheetFill.Place(table.Types, entries, [.. entries.Select(e => e.Copies)], SpaceOf(table, frame, fit, split), new int[entries.Count]);
        foreach (Spot spot in laid)
            Take(order, left, spot.Type, repeats);
        return laid;
    }

    private static void Take(IReadOnlyList<Entry> order, int[] left, int type, int copies)
    {
        for (int i = 0; copies > 0; i++)
            if (order[i].Type == type)
            {
                int taken = Math.Min(copies, left[i]);
                left[i] -= taken;
                copies -= taken;
            }
    }

    private static IFreeSpace SpaceOf(FinishTable table, FinishFrame frame, Fit fit, Split split)
    {
        if (frame.Bare is not null)
            return new GuillotineNodes(frame.Bare, fit, split);
        MaximalRectangles space = new(table.Grown.Area.W, table.Grown.Area.H, fit);
        foreach (Box covered in frame.Covered)
            space.Cover(covered);
        return space;
    }

    private static IFreeSpace BareSpace(FinishTable table, Fit fit, Split split)
    {
        if (table.Rules.Process == CutProcess.Guillotine && table.Rules.KeepOuts.Count == 0)
            return new GuillotineNodes(table.Grown.Area.W, table.Grown.Area.H, fit, split);
        MaximalRectangles space = new(table.Grown.Area.W, table.Grown.Area.H, fit);
        foreach (Measures.RectMm kept in table.Rules.KeepOuts)
            space.Cover(table.Grown.KeptOut(kept));
        return space;
    }
}
