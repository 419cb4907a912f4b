using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Patterns;

/// <summary>Lays patterns out as sheets: what they cut too much is left away, in as few more layouts as can be.</summary>
internal static class CutWriter
{
    private sealed class Sheet(CutPattern pattern, int times, int[] counts)
    {
        internal CutPattern Pattern => pattern;

        internal int Times { get; set; } = times;

        internal int[] Counts => counts;
    }

    internal static RectLayout Layout(RectProblem problem, IReadOnlyList<CutUse> uses)
    {
        List<Sheet> sheets = [.. uses.GroupBy(u => u.Pattern).Select(g => new Sheet(g.Key, g.Sum(u => u.Times), [.. g.Key.Counts])).OrderBy(s => s.Times)];
        int[] missing = new int[problem.Pieces.Count];
        for (int p = 0; p < missing.Length; p++)
        {
            long made = sheets.Sum(s => (long)s.Times * s.Counts[p]);
            missing[p] = (int)Math.Max(0, problem.Pieces[p].Copies - made);
            LeaveAway(sheets, p, made - problem.Pieces[p].Copies);
        }

        return new([.. sheets.Where(s => s.Counts.Any(n => n > 0)).OrderByDescending(s => s.Times).Select(s => Written(problem, s))], missing);
    }

    private static void LeaveAway(List<Sheet> sheets, int piece, long over)
    {
        for (int i = 0; i < sheets.Count && over > 0; i++)
        {
            Sheet sheet = sheets[i];
            int whole = (int)Math.Min(sheet.Counts[piece], over / sheet.Times);
            sheet.Counts[piece] -= whole;
            over -= (long)whole * sheet.Times;
            if (over <= 0 || over >= sheet.Times || sheet.Counts[piece] == 0)
                continue;

            // One copy less on some of the sheets: they become a layout of their own.
            Sheet part = new(sheet.Pattern, (int)over, [.. sheet.Counts]);
            part.Counts[piece]--;
            sheet.Times -= (int)over;
            sheets.Insert(i, part);
            over = 0;
        }
    }

    private static RectSheet Written(RectProblem problem, Sheet sheet)
    {
        CutPattern pattern = sheet.Pattern;
        RectStock stock = problem.Stocks[pattern.Stock];
        List<RectSpot> spots = [];
        int[] left = [.. sheet.Counts];
        int y = 0;
        foreach (IReadOnlyList<IReadOnlyList<Lie>> band in pattern.Plan.Bands)
        {
            int x = 0, high = 0;
            foreach (IReadOnlyList<Lie> column in band)
            {
                int up = 0, wide = 0;
                foreach (Lie lie in column)
                {
                    if (--left[lie.Piece] < 0)
                        continue;
                    spots.Add(Spot(lie, x, y + up, pattern.Upright));
                    (up, wide) = (up + lie.RealAcross, Math.Max(wide, lie.RealAlong));
                }

                (x, high) = (x + wide, Math.Max(high, up));
            }

            y += high == 0 ? 0 : Math.Max(high, problem.Rules.LeastStrip);
        }

        return new(pattern.Stock, sheet.Times, spots, Offcuts(problem, stock, y, pattern.Upright));
    }

    private static RectSpot Spot(Lie lie, int along, int across, bool upright) =>
        new(lie.Piece, upright ? new Box(across, along, lie.RealAcross, lie.RealAlong) : new Box(along, across, lie.RealAlong, lie.RealAcross), lie.Turned);

    private static IReadOnlyList<Box> Offcuts(RectProblem problem, RectStock stock, int used, bool upright)
    {
        Box rest = upright ? new(used, 0, stock.Width - used, stock.Height) : new(0, used, stock.Width, stock.Height - used);
        int least = problem.Rules.OffcutLeastSide;
        return least > 0 && Math.Min(rest.W, rest.H) >= least ? [rest] : [];
    }
}
