using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

/// <summary>Lays sheets in every way there is: every order, every lay, every set of zones. Whole millimetres.</summary>
internal sealed class LaneBruteForce(Belt belt, IReadOnlyList<int> widths, bool anyOrder)
{
    private readonly List<(int Start, int Width)> laid = [];
    private readonly Dictionary<(int Start, int Width), (int[] Cover, bool[] Held)> known = [];
    private (long Uncovered, int Open, long Reach)? best;

    /// <summary>The least uncovered length, open zones and distance from the load side; null where nothing can be laid and held.</summary>
    public (long Uncovered, int Open, long Reach)? Best()
    {
        Lay([.. Enumerable.Range(0, widths.Count)]);
        return best;
    }

    private void Lay(IReadOnlyList<int> left)
    {
        if (left.Count == 0)
        {
            Judge();
            return;
        }

        foreach (int board in (anyOrder ? left : [left[0]]).DistinctBy(b => widths[b]))
            foreach (double lay in belt.LaysMm)
            {
                int start = (int)lay;
                bool clear = laid.Count == 0 || start >= laid[^1].Start + laid[^1].Width + belt.LaneGapMm;
                if (!clear || start + widths[board] > belt.WidthMm || !IsStopped(start, widths[board]))
                    continue;

                laid.Add((start, widths[board]));
                Lay([.. left.Where(b => b != board)]);
                laid.RemoveAt(laid.Count - 1);
            }
    }

    private void Judge()
    {
        (int[] Cover, bool[] Held)[] boards = [.. laid.Select(Known)];
        long reach = laid.Sum(l => belt.Side is LoadSide.Far ? (long)belt.WidthMm - l.Start - l.Width : l.Start);
        for (int set = 0; set < 1 << belt.Zones.Count; set++)
        {
            if (!boards.All(b => b.Held[set]))
                continue;

            long uncovered = 0;
            int open = 0;
            for (int z = 0; z < belt.Zones.Count; z++)
                if ((set >> z & 1) == 1)
                {
                    uncovered += (long)belt.Zones[z].WidthMm - boards.Sum(b => b.Cover[z]);
                    open++;
                }

            if (best is null || (uncovered, open, reach).CompareTo(best.Value) < 0)
                best = (uncovered, open, reach);
        }
    }

    private bool IsStopped(int start, int width)
    {
        if (belt.PinsMm is null)
            return true;

        return belt.PinsMm.Any(p => belt.PinsMm.Any(q => p < q && q - p >= width * belt.PinSpreadPercent / 100
            && p >= start + belt.PinInsetMm && q <= start + width - belt.PinInsetMm));
    }

    // For a sheet at a place: millimetres over each zone, counted one by one, and which sets of zones hold it.
    private (int[] Cover, bool[] Held) Known((int Start, int Width) sheet)
    {
        if (known.TryGetValue(sheet, out (int[] Cover, bool[] Held) found))
            return found;

        int[] zoneAt = [.. Enumerable.Range(sheet.Start, sheet.Width).Select(x => belt.Zones.ToList().FindIndex(z => x >= z.StartMm && x < z.EndMm))];
        int[] cover = [.. belt.Zones.Select((_, z) => zoneAt.Count(at => at == z))];
        bool[] held = new bool[1 << belt.Zones.Count];
        for (int set = 0; set < held.Length; set++)
        {
            bool IsOpen(int zone) => zone >= 0 && (set >> zone & 1) == 1;
            int first = Array.FindIndex(zoneAt, IsOpen), last = Array.FindLastIndex(zoneAt, IsOpen);
            held[set] = first >= 0 && first <= belt.UnheldStripMm && sheet.Width - 1 - last <= belt.UnheldStripMm
                && cover.Where((_, z) => IsOpen(z)).Sum() >= sheet.Width * belt.HoldSharePercent / 100;
        }

        return known[sheet] = (cover, held);
    }
}
