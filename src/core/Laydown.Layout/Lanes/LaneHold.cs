namespace Laydown.Layout.Lanes;

/// <summary>Which zones hold one sheet at one lay at the least cost, for each wish about the first and the last zone under it.</summary>
/// <remarks>
/// Zones wholly under the sheet cost no open vacuum, only their number; so between the first and the last open zone those that hold most
/// are opened until the sheet is held. All pairs of a first and a last open zone are looked at.
/// </remarks>
internal sealed class LaneHold
{
    private const long NoSet = -1;

    private readonly IReadOnlyList<(long Start, long End)> zones;
    private readonly long start, end, share;
    private readonly long unheld;
    private readonly (LaneCost Cost, long Set)[] best = [(LaneCost.None, NoSet), (LaneCost.None, NoSet), (LaneCost.None, NoSet), (LaneCost.None, NoSet)];

    /// <summary>Looks at one sheet.</summary>
    /// <param name="zones">Zones from the belt's origin, µm.</param>
    /// <param name="start">Near side of the sheet, µm.</param>
    /// <param name="width">Its width, µm.</param>
    /// <param name="share">Width that must be held, µm.</param>
    /// <param name="unheld">Widest strip at a side that may be unheld, µm.</param>
    internal LaneHold(IReadOnlyList<(long Start, long End)> zones, long start, long width, long share, long unheld)
    {
        (this.zones, this.start, end, this.share, this.unheld) = (zones, start, start + width, share, unheld);
        First = -1;
        for (int z = 0; z < zones.Count; z++)
            if (Under(z) > 0)
                (First, Last) = (First < 0 ? z : First, z);

        if (zones.Count == 0)
            best[0] = (new(0, 0, 0), 0);
        else if (First >= 0)
            Look();
    }

    /// <summary>First zone under the sheet; −1 where there is none.</summary>
    internal int First { get; }

    /// <summary>Last zone under the sheet.</summary>
    internal int Last { get; }

    /// <summary>The least cost: each open zone's length less what the sheet covers of it, the first zone's length and number not counted.</summary>
    internal LaneCost Cost(bool first, bool last) => best[Index(first, last)].Cost;

    /// <summary>The open zones of that cost, as bits.</summary>
    internal long Set(bool first, bool last) => best[Index(first, last)].Set;

    private static int Index(bool first, bool last) => (first ? 1 : 0) + (last ? 2 : 0);

    private long Under(int zone) => Math.Max(0, Math.Min(end, zones[zone].End) - Math.Max(start, zones[zone].Start));

    private void Look()
    {
        for (int from = First; from <= Last && Math.Max(zones[from].Start, start) - start <= unheld; from++)
            for (int to = Last; to >= from && end - Math.Min(zones[to].End, end) <= unheld; to--)
                Look(from, to);
    }

    private void Look(int from, int to)
    {
        long set = (1L << from) | (1L << to), held = Under(from) + (to > from ? Under(to) : 0);
        foreach (int z in Enumerable.Range(from + 1, Math.Max(0, to - from - 1)).OrderByDescending(Under))
        {
            if (held >= share)
                break;
            set |= 1L << z;
            held += Under(z);
        }

        if (held < share)
            return;

        LaneCost cost = Costs(set);
        int index = Index(from == First, to == Last);
        if (cost.CompareTo(best[index].Cost) < 0)
            best[index] = (cost, set);
    }

    private LaneCost Costs(long set)
    {
        (long uncovered, int open) = (0, 0);
        for (int z = First; z <= Last; z++)
            if ((set >> z & 1) == 1)
            {
                uncovered -= Under(z);
                if (z == First)
                    continue;
                uncovered += zones[z].End - zones[z].Start;
                open++;
            }

        return new(uncovered, open, 0);
    }
}
