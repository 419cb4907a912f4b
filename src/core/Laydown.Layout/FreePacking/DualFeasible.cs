namespace Laydown.Layout.FreePacking;

/// <summary>A function of a length whose values never sum to over 1 for lengths that fit side by side.</summary>
/// <param name="Length">The length they share.</param>
/// <param name="Kind">Which function.</param>
/// <param name="Step">Its parameter.</param>
internal sealed record DualFeasible(int Length, DualKind Kind, int Step)
{
    /// <summary>Functions with parameters from the sides at hand, a spread part of them where there are many.</summary>
    internal static IReadOnlyList<DualFeasible> For(int length, IReadOnlyList<int> sides, int most)
    {
        int[] steps = [.. sides.Concat(sides.Select(s => length - s + 1)).Where(s => s > 0 && s <= length / 2).Distinct().Order()];
        List<DualFeasible> all = [new(length, DualKind.Same, 0)];
        for (int parts = 1; parts <= 12; parts++)
            all.Add(new(length, DualKind.Parts, parts));
        all.AddRange(steps.SelectMany(s => new DualFeasible[] { new(length, DualKind.Threshold, s), new(length, DualKind.Rounded, s) }));
        return all.Count <= most ? all : [.. Enumerable.Range(0, most).Select(i => all[(int)((long)i * all.Count / most)])];
    }

    /// <summary>The share a side counts for, 0 to 1.</summary>
    internal double Of(int side) => Kind switch
    {
        DualKind.Threshold => side > Length - Step ? 1 : side < Step ? 0 : (double)side / Length,
        DualKind.Rounded => OfRounded(side),
        DualKind.Parts => (long)(Step + 1) * side % Length == 0 ? (double)side / Length : (double)((long)(Step + 1) * side / Length) / Step,
        _ => (double)side / Length,
    };

    private double OfRounded(int side)
    {
        double whole = 2 * (Length / Step);
        return 2L * side > Length
            ? (whole - (2 * ((Length - side) / Step))) / whole
            : 2L * side == Length ? (Length / Step) / whole : 2 * (side / Step) / whole;
    }
}
