using Laydown.Layout.Judging;
using Laydown.Layout.Packing;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Whether a saw takes a sheet apart by cuts from edge to edge, and which cuts those are.</summary>
/// <param name="Cuts">The cuts in the middle of their kerf, stage after stage; those that were found where it cannot be taken apart wholly.</param>
/// <param name="Stuck">Spots that no cut parts from each other; empty where the sheet comes apart.</param>
/// <param name="Stages">How often the way of cutting changes, plus one; 0 for no cut.</param>
public sealed record SawCuts(IReadOnlyList<SawCut> Cuts, IReadOnlyList<int> Stuck, int Stages)
{
    /// <summary>Whether every piece comes free.</summary>
    public bool ComesApart => Stuck.Count == 0;

    /// <summary>Takes a sheet apart. A cut needs one gap of room.</summary>
    /// <exception cref="ArgumentException">A piece is none of the rules'.</exception>
    public static SawCuts Of(HandSheet sheet, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(rules);
        GrownSheet grown = GrownSheet.Of(rules);
        SawTree tree = TreeOf(sheet, grown);
        return new([.. tree.Cuts.Select(c => Cut(c, grown)).OrderBy(c => c.Stage)], tree.Stuck, tree.Stages);
    }

    internal static SawTree TreeOf(HandSheet sheet, GrownSheet grown) =>
        SawTree.Of(Within(sheet, grown), [.. sheet.Spots.Select(s => grown.Grown(grown.Rules.PlaceOf(s)))]);

    // Of a roll only the length used is cut.
    private static Box Within(HandSheet sheet, GrownSheet grown) => !grown.Rules.IsRoll ? grown.Area : grown.Area with
    {
        H = Math.Max(1, sheet.Spots.Select(s => grown.Grown(grown.Rules.PlaceOf(s)).Top).DefaultIfEmpty(1).Max()),
    };

    private static SawCut Cut((Box From, bool Upright, int At, int Stage) cut, GrownSheet grown)
    {
        RectMm printable = grown.Rules.Printable;
        double half = grown.Rules.GapMm / 2, x = printable.XMm, y = printable.YMm;
        double gap = grown.Rules.GapMm;
        return cut.Upright
            ? new(cut.Stage, At(x + Micro.Mm(cut.At) - half, y + Micro.Mm(cut.From.Y)), At(x + Micro.Mm(cut.At) - half, y + Micro.Mm(cut.From.Top) - gap))
            : new(cut.Stage, At(x + Micro.Mm(cut.From.X), y + Micro.Mm(cut.At) - half), At(x + Micro.Mm(cut.From.Right) - gap, y + Micro.Mm(cut.At) - half));
    }

    private static PointMm At(double x, double y) => new(Math.Round(x, 3), Math.Round(y, 3));
}
