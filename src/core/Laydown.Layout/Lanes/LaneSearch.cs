using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Lanes;

/// <summary>Lays sheets of one or several widths side by side at lays and opens zones so that they are held: the least open vacuum under no sheet.</summary>
/// <remarks>
/// Exact. A zone is shared by two sheets only where it is the last under the one and the first under the other, so a table over the lays
/// needs to know no more than which sheets lie already and whether the zone that spans the lay is open. For each sheet at each lay the
/// cheapest open zones are known beforehand for each wish about its first and its last zone. A zone that one sheet left shut and the next
/// opens is counted without what it covers of the first, which never wins: with it the same laying costs less.
/// </remarks>
internal sealed class LaneSearch
{
    private readonly Belt belt;
    private readonly IReadOnlyList<LaneType> types;
    private readonly LaneOrders orders;
    private readonly int[] zoneIndex;
    private readonly (long Start, long End)[] zones;
    private readonly double[] laysMm;
    private readonly long[] lays;
    private readonly int[] spanning;
    private readonly LaneHold?[][] holds;
    private readonly Dictionary<int, LaneHold?[]> known;
    private readonly int[,] next;
    private readonly LaneCost[,,] cost;
    private readonly int[,,] choice;

    /// <summary>Prepares the search.</summary>
    /// <param name="belt">The belt, checked.</param>
    /// <param name="types">Sheets.</param>
    /// <param name="anyOrder">Whether they may lie in any order; else types come in the order given, from the origin.</param>
    /// <param name="mostLanes">Most lanes of all types.</param>
    /// <param name="known">Holds of this belt by the width of the sheet, from searches before; new ones are added.</param>
    internal LaneSearch(Belt belt, IReadOnlyList<LaneType> types, bool anyOrder, int mostLanes, Dictionary<int, LaneHold?[]> known)
    {
        (this.belt, this.types, this.known) = (belt, types, known);
        orders = new(types, anyOrder, mostLanes);
        zoneIndex = [.. Enumerable.Range(0, belt.Zones.Count).OrderBy(i => belt.Zones[i].StartMm)];
        zones = [.. zoneIndex.Select(i => (Near(belt.Zones[i].StartMm), Near(belt.Zones[i].EndMm)))];
        laysMm = [.. belt.LaysMm.DistinctBy(Near).Order()];
        lays = [.. laysMm.Select(Near)];
        spanning = [.. lays.Select(l => Array.FindIndex(zones, z => z.Start < l && l < z.End))];
        holds = new LaneHold?[types.Count][];
        next = new int[types.Count, lays.Length];
        cost = new LaneCost[lays.Length + 1, orders.States, 2];
        choice = new int[lays.Length + 1, orders.States, 2];
    }

    /// <summary>The best laying, or null where the sheets cannot all be laid and held.</summary>
    internal LaneChoice? Best()
    {
        Prepare();
        for (int state = 0; state < orders.States; state++)
            for (int open = 0; open < 2; open++)
                cost[lays.Length, state, open] = orders.IsWhole(state) ? default : LaneCost.None;
        for (int lay = lays.Length - 1; lay >= 0; lay--)
            for (int state = 0; state < orders.States; state++)
                for (int open = 0; open < 2; open++)
                    Look(lay, state, open);

        return cost[0, 0, 0].IsNone ? null : Trace();
    }

    private static long Near(double mm) => (long)Math.Round(mm * 1000);

    private void Prepare()
    {
        for (int type = 0; type < types.Count; type++)
        {
            int width = types[type].Width;
            if (!known.TryGetValue(width, out LaneHold?[]? row))
                known[width] = row = [.. lays.Select(l => Hold(l, width))];

            holds[type] = row;
            for (int lay = 0; lay < lays.Length; lay++)
            {
                int to = lay + 1;
                while (to < lays.Length && lays[to] < lays[lay] + width + Near(belt.LaneGapMm))
                    to++;
                next[type, lay] = to;
            }
        }
    }

    private LaneHold? Hold(long start, int width)
    {
        if (start < 0 || start + width > Near(belt.WidthMm) || !LanePins.Hold(belt, start, width))
            return null;

        long share = (long)Math.Ceiling((width * belt.HoldSharePercent / 100) - 1e-3);
        return new(zones, start, width, share, Near(belt.UnheldStripMm));
    }

    private void Look(int lay, int state, int open)
    {
        // No sheet here.
        LaneCost best = cost[lay + 1, state, lay + 1 < lays.Length && spanning[lay + 1] == spanning[lay] ? open : 0];
        int chosen = -1;
        for (int type = 0; type < types.Count; type++)
        {
            int after = holds[type][lay] is null ? -1 : orders.After(state, type);
            if (after < 0)
                continue;

            for (int ends = 0; ends < 4; ends++)
                if (Laid(lay, type, ends, open, after) is LaneCost laid && laid.CompareTo(best) < 0)
                    (best, chosen) = (laid, (type * 4) + ends);
        }

        cost[lay, state, open] = best;
        choice[lay, state, open] = chosen;
    }

    // What laying a sheet here costs with all that follows; ends: 1 its first zone is open, 2 its last.
    private LaneCost? Laid(int lay, int type, int ends, int open, int after)
    {
        LaneHold hold = holds[type][lay]!;
        bool first = (ends & 1) == 1;
        LaneCost own = hold.Cost(first, (ends & 2) == 2);
        LaneCost rest = own.IsNone ? LaneCost.None : cost[next[type, lay], after, OpenAfter(lay, type, ends)];
        if (rest.IsNone)
            return null;

        if (first && !(open == 1 && hold.First == spanning[lay]))
            own = own.Plus(new(zones[hold.First].End - zones[hold.First].Start, 1, 0));
        long reach = belt.Side is LoadSide.Far ? Near(belt.WidthMm) - lays[lay] - types[type].Width : lays[lay];
        return own.Plus(rest).Plus(new(0, 0, reach));
    }

    private int OpenAfter(int lay, int type, int ends)
    {
        int to = next[type, lay];
        return (ends & 2) == 2 && to < lays.Length && spanning[to] == holds[type][lay]!.Last ? 1 : 0;
    }

    private LaneChoice Trace()
    {
        List<int> laid = [];
        List<double> starts = [];
        long set = 0;
        (int lay, int state, int open) = (0, 0, 0);
        while (lay < lays.Length)
        {
            int chosen = choice[lay, state, open];
            if (chosen < 0)
            {
                open = lay + 1 < lays.Length && spanning[lay + 1] == spanning[lay] ? open : 0;
                lay++;
                continue;
            }

            (int type, int ends) = (chosen / 4, chosen % 4);
            laid.Add(type);
            starts.Add(laysMm[lay]);
            set |= holds[type][lay]!.Set((ends & 1) == 1, (ends & 2) == 2);
            (lay, state, open) = (next[type, lay], orders.After(state, type), OpenAfter(lay, type, ends));
        }

        IReadOnlyList<int> zonesOpen = [.. Enumerable.Range(0, zones.Length).Where(z => (set >> z & 1) == 1).Select(z => zoneIndex[z]).Order()];
        return new(laid, starts, zonesOpen, Micro.Mm(cost[0, 0, 0].Uncovered), cost[0, 0, 0]);
    }
}
