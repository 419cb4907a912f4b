using Laydown.Layout.Packing;

namespace Laydown.Layout.Judging;

/// <summary>Takes a sheet apart by cuts from edge to edge, all parallel cuts of one stage at once, as far as that goes.</summary>
/// <remarks>
/// Boxes and sheet are grown by one gap, so that plain touching keeps the kerf. A cut between two groups stays possible whatever is cut first,
/// so taking every cut of a direction before turning loses nothing: what cannot be parted then cannot be parted at all (whole memory).
/// </remarks>
internal sealed class SawTree
{
    private readonly IReadOnlyList<Box> boxes;
    private readonly List<(Box From, bool Upright, int At, int Stage)> cuts = [];
    private readonly List<Box> bare = [];
    private readonly List<int> stuck = [];

    private SawTree(IReadOnlyList<Box> boxes) => this.boxes = boxes;

    /// <summary>The part cut through, the way of the cut, its place (x where upright, else y), its stage from 1.</summary>
    internal IReadOnlyList<(Box From, bool Upright, int At, int Stage)> Cuts => cuts;

    /// <summary>Bare rectangles the cuts free; they share no area.</summary>
    internal IReadOnlyList<Box> Bare => bare;

    /// <summary>Boxes of the parts that no cut takes apart; empty where everything comes free.</summary>
    internal IReadOnlyList<int> Stuck => stuck;

    /// <summary>Stages of cuts needed.</summary>
    internal int Stages => cuts.Select(c => c.Stage).DefaultIfEmpty(0).Max();

    /// <summary>The tree that begins with the way that needs fewer stages; of equal ones that with the larger rest.</summary>
    internal static SawTree Of(Box sheet, IReadOnlyList<Box> boxes)
    {
        SawTree level = From(sheet, boxes, upright: false), upright = From(sheet, boxes, upright: true);
        return (level.Stages, -level.LargestBare).CompareTo((upright.Stages, -upright.LargestBare)) <= 0 ? level : upright;
    }

    private long LargestBare => bare.Select(b => b.Area).DefaultIfEmpty(0).Max();

    private static SawTree From(Box sheet, IReadOnlyList<Box> boxes, bool upright)
    {
        SawTree tree = new(boxes);
        if (boxes.Count == 0)
            tree.bare.Add(sheet);
        else
            tree.Part(sheet, [.. Enumerable.Range(0, boxes.Count)], upright, 1, onlyGroup: false);
        return tree;
    }

    private void Part(Box whole, List<int> inside, bool upright, int stage, bool onlyGroup)
    {
        // Groups that no cut of this way goes between, in order.
        inside.Sort((a, b) => (Low(boxes[a], upright), a).CompareTo((Low(boxes[b], upright), b)));
        List<(int From, int To, List<int> Members)> groups = [];
        foreach (int i in inside)
        {
            (int low, int high) = (Low(boxes[i], upright), High(boxes[i], upright));
            if (groups.Count == 0 || low >= groups[^1].To)
                groups.Add((low, high, []));
            groups[^1].Members.Add(i);
            groups[^1] = groups[^1] with { To = Math.Max(groups[^1].To, high) };
        }

        if (groups.Count == 1 && onlyGroup && inside.Count > 1)
        {
            stuck.AddRange(inside);
            return;
        }

        // What lies between the groups and around them comes free.
        int at = Low(whole, upright);
        foreach ((int low, int high, List<int> members) in groups)
        {
            Free(whole, upright, at, low, stage);
            Box part = Slice(whole, upright, low, high);
            if (high < High(whole, upright))
                cuts.Add((whole, upright, high, stage));
            if (!(groups.Count == 1 && onlyGroup))
                Part(part, members, !upright, stage + 1, onlyGroup: groups.Count == 1);
            at = high;
        }

        Free(whole, upright, at, High(whole, upright), stage);
    }

    private void Free(Box whole, bool upright, int low, int high, int stage)
    {
        if (high <= low)
            return;
        bare.Add(Slice(whole, upright, low, high));
        if (low == Low(whole, upright))
            cuts.Add((whole, upright, high, stage));
    }

    private static int Low(Box box, bool upright) => upright ? box.X : box.Y;

    private static int High(Box box, bool upright) => upright ? box.Right : box.Top;

    private static Box Slice(Box whole, bool upright, int low, int high) =>
        upright ? whole with { X = low, W = high - low } : whole with { Y = low, H = high - low };
}
