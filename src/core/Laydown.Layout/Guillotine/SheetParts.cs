using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Guillotine;

/// <summary>Cuts the keep-outs of a sheet out from edge to edge, in several ways, so that the bare parts can be cut further.</summary>
internal static class SheetParts
{
    private const int Ways = 12;

    internal static IReadOnlyList<IReadOnlyList<SheetPart>> Of(RectStock stock, RectRules rules, int seed)
    {
        Box whole = new(0, 0, stock.Width, stock.Height);
        IReadOnlyList<Box> outs = [.. stock.KeepOuts.Where(k => k.Overlaps(whole)).Select(k => Clipped(k, whole))];
        (int stage, bool upright) = rules.MostStages > 0 ? (1, rules.FirstCutUpright) : (0, false);
        if (outs.Count == 0)
            return [[new(whole, stage, upright)]];

        // Draw the order of cuts by chance, drop ways drawn twice; the one with the largest part comes first.
        Chance chance = new(seed);
        List<IReadOnlyList<SheetPart>> ways = [];
        for (int i = 0; i < Ways; i++)
        {
            List<SheetPart> parts = [];
            Cut(whole, outs, stage, upright, chance, parts);
            parts.Sort((a, b) => (a.Place.Y, a.Place.X).CompareTo((b.Place.Y, b.Place.X)));
            if (!ways.Any(w => w.SequenceEqual(parts)))
                ways.Add(parts);
        }

        return [.. ways.OrderByDescending(w => w.Select(p => p.Place.Area).Append(0).Max())];
    }

    private static Box Clipped(Box box, Box to)
    {
        int x = Math.Max(box.X, to.X), y = Math.Max(box.Y, to.Y);
        return new(x, y, Math.Min(box.Right, to.Right) - x, Math.Min(box.Top, to.Top) - y);
    }

    private static void Cut(Box part, IReadOnlyList<Box> outs, int stage, bool upright, Chance chance, List<SheetPart> parts)
    {
        if (outs.Count == 0)
        {
            parts.Add(new(part, stage, upright));
            return;
        }

        List<(int At, bool Upright)> cuts = Lines(part, outs);
        if (cuts.Count == 0 && outs.Any(o => o == part))
            return;

        // Where every line would cross a keep-out, cut along the bounds of all of them together, else through one.
        if (cuts.Count == 0)
        {
            Box all = Around(outs);
            if (all == part)
                return;
            cuts = Lines(part, [all]);
            outs = [all];
        }

        (int at, bool isUpright) = cuts[chance.Below(cuts.Count)];
        int next = stage > 0 && upright == isUpright ? stage : stage + 1;
        (Box low, Box high) = isUpright
            ? (part with { W = at - part.X }, part with { X = at, W = part.Right - at })
            : (part with { H = at - part.Y }, part with { Y = at, H = part.Top - at });
        Cut(low, [.. outs.Where(low.Holds)], next, isUpright, chance, parts);
        Cut(high, [.. outs.Where(high.Holds)], next, isUpright, chance, parts);
    }

    // Lines along sides of keep-outs that meet none of them inside.
    private static List<(int At, bool Upright)> Lines(Box part, IReadOnlyList<Box> outs)
    {
        List<(int, bool)> lines = [];
        lines.AddRange(outs.SelectMany(o => (int[])[o.X, o.Right]).Distinct()
                .Where(x => x > part.X && x < part.Right && !outs.Any(o => o.X < x && x < o.Right)).Select(x => (x, true)));
        lines.AddRange(outs.SelectMany(o => (int[])[o.Y, o.Top]).Distinct()
                .Where(y => y > part.Y && y < part.Top && !outs.Any(o => o.Y < y && y < o.Top)).Select(y => (y, false)));
        return lines;
    }

    private static Box Around(IReadOnlyList<Box> boxes)
    {
        int x = boxes.Min(b => b.X), y = boxes.Min(b => b.Y);
        return new(x, y, boxes.Max(b => b.Right) - x, boxes.Max(b => b.Top) - y);
    }
}
