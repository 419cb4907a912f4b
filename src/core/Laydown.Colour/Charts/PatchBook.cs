namespace Laydown.Colour.Charts;

/// <summary>Collects patches: rounds them to codes, keeps out what breaks a limit and what is there already.</summary>
internal sealed class PatchBook(IReadOnlyList<ChartInk> inks, double totalPercent)
{
    private readonly int[] most = [.. inks.Select(i => (int)Math.Floor((i.LimitPercent * 2.55) + 1e-9))];
    private readonly int total = (int)Math.Floor((totalPercent * 2.55) + 1e-9);
    private readonly HashSet<string> taken = [];
    private readonly List<ChartPatch> patches = [];

    /// <summary>Patches so far.</summary>
    internal IReadOnlyList<ChartPatch> Patches => patches;

    /// <summary>Number of inks.</summary>
    internal int Inks => inks.Count;

    /// <summary>Most of an ink, parts of one full ink.</summary>
    internal double Most(int ink) => most[ink] / 255.0;

    /// <summary>Names of the inks.</summary>
    internal string Name(int ink) => inks[ink].Name;

    /// <summary>Place of an ink by its name, -1 where it is missing.</summary>
    internal int Find(string name) =>
        Enumerable.Range(0, inks.Count).FirstOrDefault(i => string.Equals(inks[i].Name, name, StringComparison.OrdinalIgnoreCase), -1);

    /// <summary>Adds shares of each ink's limit; false where the total is over its limit or the patch is there already.</summary>
    internal bool Add(string part, IReadOnlyList<double> shares, bool again = false)
    {
        int[] codes = Codes(shares);
        bool fresh = taken.Add(string.Join(' ', codes));
        if (codes.Sum() > total || !(fresh || again))
            return false;
        patches.Add(new(Invariant($"P{patches.Count + 1:0000}"), part, [.. codes.Select(c => c / 255.0)]));
        return true;
    }

    /// <summary>Whether shares keep the total limit.</summary>
    internal bool Keeps(IReadOnlyList<double> shares) => Codes(shares).Sum() <= total;

    private int[] Codes(IReadOnlyList<double> shares) => [.. shares.Select((s, i) => (int)Math.Round(Math.Clamp(s, 0, 1) * most[i]))];
}
