using Laydown.Layout.Packing;

namespace Laydown.Layout.Rectangles;

/// <summary>The last step of a layout: the pieces of the emptiest sheet are pushed together, so that one rest over a whole side of it is as large as can be.</summary>
/// <remarks>The sheet is made narrower or lower by halves, as long as its pieces still fit (from memory).</remarks>
internal static class EdgeRest
{
    /// <summary>With more pieces on the emptiest sheet it is left as it is: its rest is small, and to push it takes long.</summary>
    private const int MostSpots = 100;

    /// <summary>Sizes tried for each side.</summary>
    private const int Tries = 7;

    /// <summary>The layout, or one with a larger rest on its emptiest sheet.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="layout">A layout of it.</param>
    /// <param name="fill">Fills one sheet; cheap.</param>
    internal static RectLayout Pushed(RectProblem problem, RectLayout layout, Func<RectProblem, RectLayout> fill)
    {
        int least = problem.Rules.OffcutLeastSide, at = Emptiest(problem, layout);
        if (least <= 0 || at < 0 || layout.Sheets[at].Spots.Count > MostSpots)
            return layout;

        RectSheet best = layout.Sheets[at];
        foreach (bool upright in Sides(problem.Rules))
            best = Pushed(problem, best, upright, fill);
        return ReferenceEquals(best, layout.Sheets[at]) ? layout : layout with { Sheets = [.. layout.Sheets.Select((s, i) => i == at ? best : s)] };
    }

    // A rest comes off with the first cut: where its direction is given, on that side alone.
    private static IEnumerable<bool> Sides(RectRules rules) => rules.MostStages > 0 ? [rules.FirstCutUpright] : [true, false];

    private static int Emptiest(RectProblem problem, RectLayout layout)
    {
        (int found, double least) = (-1, double.PositiveInfinity);
        for (int i = 0; i < layout.Sheets.Count; i++)
        {
            RectSheet sheet = layout.Sheets[i];
            double full = (double)sheet.Spots.Sum(s => s.Place.Area) / problem.Stocks[sheet.Stock].Area;
            if (full < least)
                (found, least) = (i, full);
        }

        return found;
    }

    // Upright: the sheet is cut upright, so that a rest of its full height comes off at the right.
    private static RectSheet Pushed(RectProblem problem, RectSheet sheet, bool upright, Func<RectProblem, RectLayout> fill)
    {
        RectStock stock = problem.Stocks[sheet.Stock];
        int whole = upright ? stock.Width : stock.Height, across = upright ? stock.Height : stock.Width;
        long largest = sheet.Offcuts.Select(o => o.Area).Append(0).Max();

        // Wider than this the rest is no larger than the one there is, narrower than the pieces' area it is never.
        int high = (int)Math.Min(whole - problem.Rules.OffcutLeastSide, whole - 1 - (largest / across));
        int low = (int)(sheet.Spots.Sum(s => s.Place.Area) / across);
        for (int i = 0; i < Tries && low < high; i++)
        {
            // The whole way first: where that fails the rest cannot be bettered.
            int size = i == 0 ? high : low + ((high - low) / 2);
            if (Filled(problem, sheet, upright, size, fill) is RectSheet found)
                (sheet, high) = (found, size);
            else if (i == 0)
                return sheet;
            else
                low = size + 1;
        }

        return sheet;
    }

    private static RectSheet? Filled(RectProblem problem, RectSheet sheet, bool upright, int size, Func<RectProblem, RectLayout> fill)
    {
        RectStock stock = problem.Stocks[sheet.Stock];
        Box inside = upright ? new(0, 0, size, stock.Height) : new(0, 0, stock.Width, size);
        int[] pieces = [.. sheet.Spots.Select(s => s.Piece).Distinct().Order()];
        RectLayout found = fill(new(
            [stock with { Width = inside.W, Height = inside.H, Copies = 1, KeepOuts = [.. stock.KeepOuts.Where(k => k.Overlaps(inside)).Select(k => Clipped(k, inside))] }],
            [.. pieces.Select(p => problem.Pieces[p] with { Copies = sheet.Spots.Count(s => s.Piece == p) })],
            problem.Rules));
        if (found.Sheets is not [RectSheet one] || found.Missing.Any(m => m > 0) || one.Repeats != 1)
            return null;

        // The rest at the far edge comes first; it holds no place kept out.
        Box rest = upright ? new(size, 0, stock.Width - size, stock.Height) : new(0, size, stock.Width, stock.Height - size);
        return stock.KeepOuts.Any(rest.Overlaps)
            ? null
            : sheet with { Spots = [.. one.Spots.Select(s => s with { Piece = pieces[s.Piece] })], Offcuts = [rest, .. one.Offcuts] };
    }

    private static Box Clipped(Box box, Box to)
    {
        int x = Math.Max(box.X, to.X), y = Math.Max(box.Y, to.Y);
        return new(x, y, Math.Min(box.Right, to.Right) - x, Math.Min(box.Top, to.Top) - y);
    }
}
