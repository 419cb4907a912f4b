using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace Laydown.Instances.Rectangles;

/// <summary>Judges layouts of rectangles on its own, with a geometry library and nothing of the code that made them.</summary>
public static class RectChecker
{
    /// <summary>What is wrong with a layout, in words; empty where nothing is.</summary>
    public static IReadOnlyList<string> Faults(RectInstance instance, IReadOnlyList<FilledBin> bins, RectAsk ask)
    {
        ArgumentNullException.ThrowIfNull(instance);
        ArgumentNullException.ThrowIfNull(bins);
        ArgumentNullException.ThrowIfNull(ask);
        return
        [
            .. bins.SelectMany((b, i) => OfBin(instance, b, ask).Select(f => FormattableString.Invariant($"board {i + 1}: {f}"))),
            .. Copies(instance, bins, ask),
        ];
    }

    /// <summary>Fewest stages of edge-to-edge cuts that part the rectangles, trimming not counted, when the first goes in a given direction; null where none do.</summary>
    public static int? Stages(IReadOnlyList<Envelope> boxes, bool upright)
    {
        ArgumentNullException.ThrowIfNull(boxes);
        return Stages(boxes, upright, idle: false);
    }

    private static IEnumerable<string> OfBin(RectInstance instance, FilledBin filled, RectAsk ask)
    {
        RectBin bin = instance.Bins[filled.Bin];
        Envelope inside = new(0, bin.Width, 0, bin.Height);
        STRtree<int> tree = new();
        Envelope[] boxes = [.. filled.Placed.Select(p => new Envelope(p.X, p.X + p.Width, p.Y, p.Y + p.Height))];
        for (int i = 0; i < boxes.Length; i++)
            tree.Insert(boxes[i], i);

        for (int i = 0; i < boxes.Length; i++)
        {
            if (!inside.Covers(boxes[i]))
                yield return FormattableString.Invariant($"item {filled.Placed[i].Item} at {boxes[i]} leaves the board of {bin.Width} x {bin.Height}");
            foreach (int j in tree.Query(boxes[i]).Where(j => j > i && Share(boxes[i], boxes[j])))
                yield return FormattableString.Invariant($"items {filled.Placed[i].Item} and {filled.Placed[j].Item} overlap");
            if (WrongSize(instance.Items[filled.Placed[i].Item], filled.Placed[i], ask.MayTurn))
                yield return FormattableString.Invariant($"item {filled.Placed[i].Item} has another size or is turned");
            foreach (RectDefect d in instance.Defects.Where(d => d.Bin == filled.Bin && Share(boxes[i], new(d.X, d.X + d.Width, d.Y, d.Y + d.Height))))
                yield return FormattableString.Invariant($"item {filled.Placed[i].Item} lies on the defect at {d.X}, {d.Y}");
        }

        if (ask.Guillotine && CutFault(boxes, ask) is string fault)
            yield return fault;
    }

    private static string? CutFault(IReadOnlyList<Envelope> boxes, RectAsk ask)
    {
        int? upright = ask.FirstUpright == false ? null : Stages(boxes, upright: true);
        int? across = ask.FirstUpright == true ? null : Stages(boxes, upright: false);
        if (upright is null && across is null)
            return "no order of edge-to-edge cuts frees the items";

        int least = Math.Min(upright ?? int.MaxValue, across ?? int.MaxValue);
        return ask.Stages > 0 && least > ask.Stages ? FormattableString.Invariant($"{least} stages of cuts are needed; {ask.Stages} allowed") : null;
    }

    private static IEnumerable<string> Copies(RectInstance instance, IReadOnlyList<FilledBin> bins, RectAsk ask)
    {
        long[] placed = new long[instance.Items.Count], used = new long[instance.Bins.Count];
        foreach (FilledBin bin in bins)
        {
            if (bin.Repeats < 1)
                yield return FormattableString.Invariant($"a board is repeated {bin.Repeats} times");
            used[bin.Bin] += bin.Repeats;
            foreach (PlacedRect p in bin.Placed)
                placed[p.Item] += bin.Repeats;
        }

        for (int i = 0; i < placed.Length; i++)
            if (placed[i] < instance.Items[i].Copies || (placed[i] > instance.Items[i].Copies && !ask.MoreAllowed))
                yield return FormattableString.Invariant($"item {i}: wanted {instance.Items[i].Copies}, placed {placed[i]}");
        for (int i = 0; i < used.Length; i++)
            if (instance.Bins[i].Copies is int there && used[i] > there)
                yield return FormattableString.Invariant($"board kind {i}: {used[i]} used, {there} there");
    }

    private static bool WrongSize(RectItem item, PlacedRect placed, bool mayTurn) =>
        !((placed.Width == item.Width && placed.Height == item.Height) || (mayTurn && placed.Width == item.Height && placed.Height == item.Width));

    // Sides may touch.
    private static bool Share(Envelope a, Envelope b) => a.MinX < b.MaxX && b.MinX < a.MaxX && a.MinY < b.MaxY && b.MinY < a.MaxY;

    // All full cuts of one direction are made at once; then each slab is cut the other way.
    private static int? Stages(IReadOnlyList<Envelope> boxes, bool upright, bool idle)
    {
        if (boxes.Count <= 1)
            return 0;

        List<List<Envelope>> slabs = Slabs(boxes, upright);
        if (slabs.Count == 1)
            return idle ? null : Stages(boxes, !upright, idle: true) is int later ? later + 1 : null;

        int most = 0;
        foreach (List<Envelope> slab in slabs)
        {
            if (Stages(slab, !upright, idle: true) is not int more)
                return null;
            most = Math.Max(most, more);
        }

        return most + 1;
    }

    private static List<List<Envelope>> Slabs(IReadOnlyList<Envelope> boxes, bool upright)
    {
        List<List<Envelope>> slabs = [];
        double end = double.MinValue;
        foreach (Envelope box in boxes.OrderBy(b => upright ? b.MinX : b.MinY))
        {
            if ((upright ? box.MinX : box.MinY) >= end)
                slabs.Add([]);
            slabs[^1].Add(box);
            end = Math.Max(end, upright ? box.MaxX : box.MaxY);
        }

        return slabs;
    }
}
