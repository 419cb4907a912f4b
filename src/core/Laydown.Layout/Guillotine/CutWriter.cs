using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Guillotine;

/// <summary>Turns trees of cuts into places on sheets; equal sheets become one with repeats.</summary>
internal static class CutWriter
{
    internal static RectLayout Write(CutForest forest, CutJob job)
    {
        // Copies of a type are handed to its pieces in the order of the problem.
        int[] taken = new int[job.Types.Count];
        List<RectSheet> sheets = [];
        foreach (int slot in forest.Open)
            sheets.Add(Sheet(forest, job, slot, taken));
        int[] missing = [.. job.Problem.Pieces.Select(p => p.Copies)];
        foreach (RectSheet sheet in sheets)
            foreach (RectSpot spot in sheet.Spots)
                missing[spot.Piece]--;
        return new(Merged(sheets), missing);
    }

    private static RectSheet Sheet(CutForest forest, CutJob job, int slot, int[] taken)
    {
        CutSheet sheet = forest.SheetAt(slot);
        List<RectSpot> spots = [];
        List<Box> offcuts = [];
        int part = 0;
        for (int root = sheet.Root; root != CutNode.None; root = forest[root].Next, part++)
        {
            Box place = job.Parts[sheet.Stock][sheet.Way][part].Place;
            Walk(forest, job, root, place.X, place.Y, taken, spots, offcuts);
        }

        return new(sheet.Stock, 1, spots, [.. offcuts.OrderByDescending(o => o.Area).ThenBy(o => o.Y).ThenBy(o => o.X)]);
    }

    private static void Walk(CutForest forest, CutJob job, int node, int x, int y, int[] taken, List<RectSpot> spots, List<Box> offcuts)
    {
        CutNode n = forest[node];
        if (n.Kind == CutKind.Piece)
        {
            spots.Add(new(PieceOf(job.Types[n.Type], taken[n.Type]++), new(x, y, n.W, n.H), n.Turned));
            return;
        }

        if (n.Kind == CutKind.Bare)
        {
            if (CutRank.IsOffcut(n, job))
                offcuts.Add(new(x, y, n.W, n.H));
            return;
        }

        // Larger children first, those with large offcuts behind them, the bare one last: rests gather at the far edge.
        List<int> children = [];
        for (int child = n.First; child != CutNode.None; child = forest[child].Next)
            children.Add(child);
        foreach (int child in children
            .OrderBy(c => c == n.Rest).ThenBy(c => LargestOffcut(forest, job, c))
            .ThenByDescending(c => n.Upright ? forest[c].W : forest[c].H).ThenBy(c => forest[c].Type))
        {
            Walk(forest, job, child, x, y, taken, spots, offcuts);
            (x, y) = n.Upright ? (x + forest[child].W, y) : (x, y + forest[child].H);
        }
    }

    private static long LargestOffcut(CutForest forest, CutJob job, int node)
    {
        long largest = CutRank.IsOffcut(forest[node], job) ? forest[node].Area : 0;
        for (int child = forest[node].First; child != CutNode.None; child = forest[child].Next)
            largest = Math.Max(largest, LargestOffcut(forest, job, child));
        return largest;
    }

    private static int PieceOf(CutType type, int copy)
    {
        foreach ((int piece, int copies) in type.Pieces)
        {
            if (copy < copies)
                return piece;
            copy -= copies;
        }

        throw new InvalidOperationException("More copies on the sheets than were wanted.");
    }

    /// <summary>Equal sheets as one with repeats, the fullest first.</summary>
    internal static IReadOnlyList<RectSheet> Merged(IEnumerable<RectSheet> sheets) =>
    [
        .. sheets
            .GroupBy(s => string.Join(';', s.Spots.OrderBy(p => p.Place.Y).ThenBy(p => p.Place.X)
                .Select(p => Invariant($"{p.Piece},{p.Place.X},{p.Place.Y},{p.Turned}")).Prepend(Invariant($"{s.Stock}"))), StringComparer.Ordinal)
            .Select(g => g.First() with { Repeats = g.Count() })
            .OrderByDescending(s => s.Spots.Sum(p => p.Place.Area)),
    ];
}
