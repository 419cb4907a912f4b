using Laydown.Layout.Boards;
using Laydown.Layout.Judging;
using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>What there is to finish: sheets with locked pieces, and the pieces that still want a place.</summary>
/// <param name="Frames">Sheets with locked pieces; of a roll always one.</param>
/// <param name="Types">Pieces without a place that fit on a bare sheet, with their copies.</param>
/// <param name="Grown">The bare sheet.</param>
internal sealed record FinishTable(IReadOnlyList<FinishFrame> Frames, IReadOnlyList<PieceType> Types, GrownSheet Grown)
{
    /// <summary>The locked pieces alone.</summary>
    internal IReadOnlyList<HandSheet> Kept => [.. Frames.Select(f => f.Kept).Where(s => s.Spots.Count > 0)];

    internal HandRules Rules => Grown.Rules;

    internal static FinishTable Of(IReadOnlyList<HandSheet> sheets, HandRules rules)
    {
        GrownSheet grown = GrownSheet.Of(rules);
        Bounds.Within(grown.Area.W, 1, int.MaxValue, nameof(rules));
        Bounds.Within(grown.Area.H, 1, int.MaxValue, nameof(rules));
        List<HandSheet> kept = [.. FinishRest.Kept(sheets)];
        if (rules.IsRoll && kept.Count == 0)
            kept.Add(new(1, []));
        IReadOnlyList<int> missing = HandSheets.Missing(kept, rules);
        IReadOnlyList<Piece> wanted = [.. rules.Pieces.Select((p, i) => p with { Quantity = missing[i] }).Where(p => p.Quantity > 0)];
        IEnumerable<PieceType> types = PieceType.From(wanted, rules.GapMm).Where(t => t.Fits(grown.Area.W, grown.Area.H));
        return new([.. kept.Select(s => FrameOf(s, grown))], [.. types.Select((t, i) => t with { Index = i })], grown);
    }

    /// <summary>The least number of sheets any layout must begin: by area, and without locked pieces also by pieces that cannot share a sheet.</summary>
    internal long LeastSheets()
    {
        if (Frames.Count == 0)
            return new BoardArea(Grown.Area.W, Grown.Area.H).LeastBoards(Types);
        Int128 beyond = 0;
        foreach (PieceType type in Types)
            beyond += (Int128)type.Area * type.Piece.Quantity;
        foreach (FinishFrame frame in Frames)
            beyond -= (Int128)Math.Max(0, Grown.Area.Area - frame.Covered.Sum(c => Shared(c, Grown.Area))) * frame.Kept.Repeats;
        return beyond <= 0 ? 0 : (long)((beyond + Grown.Area.Area - 1) / Grown.Area.Area);
    }

    private static long Shared(Box one, Box other) =>
        (long)Math.Max(0, Math.Min(one.Right, other.Right) - Math.Max(one.X, other.X)) * Math.Max(0, Math.Min(one.Top, other.Top) - Math.Max(one.Y, other.Y));

    private static FinishFrame FrameOf(HandSheet kept, GrownSheet grown)
    {
        HandRules rules = grown.Rules;
        IReadOnlyList<Box> covered = [.. kept.Spots.Select(s => grown.Grown(rules.PlaceOf(s))), .. rules.KeepOuts.Select(grown.KeptOut)];
        SawTree? tree = rules.Process == CutProcess.Guillotine && rules.KeepOuts.Count == 0 ? SawTree.Of(grown.Area, covered) : null;
        return new(kept, covered, tree is { Stuck.Count: 0 } ? tree.Bare : null);
    }
}
