using Laydown.Layout.Boards;
using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Rolls;

/// <summary>Lays rectangles out on one length of roll, as short as can be found.</summary>
public static class RollLayout
{
    /// <summary>One long layout: the roll's width × the length used, lead-in and lead-out contained; y runs along the roll.</summary>
    /// <remarks>
    /// For edge-to-edge cutting the roll is a row of sections with a full cut between them, each cut on by a tree of cuts; for free cutting
    /// also packed without sections, and the shorter is kept. Pieces wider than the roll, and whatever the length left on the roll cannot
    /// take, come back as unplaced.
    /// </remarks>
    /// <exception cref="ArgumentException">An id comes twice, a size is not over 0, a quantity is under 1, or the margins leave nothing of the roll.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; nothing is kept.</exception>
    public static LayoutResult Solve(IReadOnlyList<Piece> pieces, RollRules rules, CancellationToken cancellation)
    {
        Demand(rules);
        int width = Micro.Down(rules.WidthMm - (2 * rules.EdgeMarginMm)) + Micro.Up(rules.GapMm);
        int length = Micro.Down(rules.LengthMm - rules.LeadInMm - rules.LeadOutMm) + Micro.Up(rules.GapMm);
        IReadOnlyList<PieceType> all = PieceType.From(pieces, rules.GapMm);
        List<UnplacedPiece> unplaced = [.. all.Where(t => !t.Fits(width, length)).Select(t => TooLarge(t.Piece, rules))];
        IReadOnlyList<PieceType> types = [.. all.Where(t => t.Fits(width, length)).Select((t, i) => t with { Index = i })];
        if (types.Count == 0)
            return new([], unplaced);

        IReadOnlyList<Spot> spots = new RollSearch(types, width, rules).Best(cancellation);
        IReadOnlyList<Spot> kept = [.. spots.Where(s => s.Place.Top <= length)];
        unplaced.AddRange(spots.Where(s => s.Place.Top > length).GroupBy(s => s.Type).Select(g => TooLong(types[g.Key].Piece, g.Count(), rules)));
        return new([Write(kept, types, rules)], unplaced);
    }

    private static void Demand(RollRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        Bounds.Within(rules.EdgeMarginMm, 0, 10_000, nameof(rules));
        Bounds.Within(rules.GapMm, 0, 1000, nameof(rules));
        Bounds.Within(rules.LeadInMm, 0, 100_000, nameof(rules));
        Bounds.Within(rules.LeadOutMm, 0, 100_000, nameof(rules));
        Bounds.Within(rules.Iterations, 0, 10_000_000, nameof(rules));
        Bounds.Within(rules.WidthMm - (2 * rules.EdgeMarginMm), 1, 1_000_000, nameof(rules));
        Bounds.Within(rules.LengthMm - rules.LeadInMm - rules.LeadOutMm, 1, 1_000_000, nameof(rules));
    }

    private static SheetLayout Write(IReadOnlyList<Spot> spots, IReadOnlyList<PieceType> types, RollRules rules)
    {
        int[] copies = new int[types.Count];
        IReadOnlyList<Placement> placements = [.. spots.OrderBy(s => s.Place.Y).ThenBy(s => s.Place.X)
            .Select(s => SheetWriter.Put(s, types[s.Type].Piece, rules.EdgeMarginMm, rules.LeadInMm, ++copies[s.Type]))];
        double end = placements.Max(p => p.Place.TopMm);
        return new(new(rules.WidthMm, end + rules.LeadOutMm), rules.EdgeMarginMm, placements, 1, []);
    }

    private static UnplacedPiece TooLarge(Piece piece, RollRules rules) => new(
        piece.Id,
        piece.Quantity,
        Invariant($"{piece.Printed}{(piece.MayTurn ? ", may turn" : ", may not turn")}"),
        Invariant($"at most {rules.WidthMm - (2 * rules.EdgeMarginMm):0.##} mm wide and {rules.LengthMm - rules.LeadInMm - rules.LeadOutMm:0.##} mm long; or panels"));

    private static UnplacedPiece TooLong(Piece piece, int copies, RollRules rules) => new(
        piece.Id, copies, Invariant($"no length left for {piece.Printed}"), Invariant($"a longer roll than {rules.LengthMm / 1000:0.##} m"));
}
