using Laydown.Layout.Boards;
using Laydown.Layout.Packing;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Rolls;

/// <summary>One roll, or two side by side, that pieces are tried on.</summary>
internal sealed class RollCandidate
{
    private readonly IReadOnlyList<Piece> pieces;
    private readonly IReadOnlyList<RollStock> rolls;
    private readonly RollTerms terms;
    private readonly IReadOnlyList<PieceType> types;
    private readonly IReadOnlyList<UnplacedPiece> tooLarge;
    private readonly RollFill fill;
    private readonly int gap, length, least, longest, longestMark;

    internal RollCandidate(IReadOnlyList<Piece> pieces, IReadOnlyList<RollStock> rolls, RollTerms terms)
    {
        (this.pieces, this.rolls, this.terms) = (pieces, rolls, terms);
        gap = Micro.Up(terms.GapMm);
        length = Micro.Down(rolls.Min(r => r.LengthMm) - terms.LeadInMm - terms.LeadOutMm) + gap;
        least = terms.LeastSectionMm > 0 ? Micro.Up(terms.LeastSectionMm) + gap : 0;
        longest = terms.LongestSectionMm > 0 ? Math.Min(length, Micro.Down(terms.LongestSectionMm) + gap) : length;
        longestMark = terms.LongestSectionMm > 0 ? longest : int.MaxValue;
        int[] widths = [.. rolls.Select(r => Micro.Down(r.WidthMm - (2 * r.EdgeMarginMm)) + gap)];
        IReadOnlyList<PieceType> all = PieceType.From(pieces, terms.GapMm);
        bool Takes(PieceType type) => rolls.Where((r, i) => IsFor(type.Piece, r) && type.Fits(widths[i], longest)).Any();
        tooLarge = [.. all.Where(t => !Takes(t)).Select(t => rolls.Any(r => IsFor(t.Piece, r)) ? TooLarge(t.Piece) : OtherMedia(t.Piece))];
        types = [.. all.Where(Takes).Select((t, i) => t with { Index = i })];
        fill = new(types, widths, terms.Process, longest, [.. types.Select(t => Own(t.Piece))]);
    }

    private bool IsFor(Piece piece, RollStock roll) =>
        terms.Media is not { } media || !media.TryGetValue(piece.Id, out string? id) || string.Equals(id, roll.Id, StringComparison.Ordinal);

    // The roll a piece must lie on, or −1 where there is a choice.
    private int Own(Piece piece)
    {
        int[] taking = [.. Enumerable.Range(0, rolls.Count).Where(i => IsFor(piece, rolls[i]))];
        return rolls.Count > 1 && taking.Length == 1 ? taking[0] : -1;
    }

    /// <summary>The best plan on these rolls.</summary>
    internal RollPlan Solve(SearchRules rules, Action<RollPlan>? better, CancellationToken stop) => types.Count == 0
        ? new([], tooLarge, 0, 0, 0) { Rolls = [.. rolls.Select(r => r.Id)] }
        : Plan(fill.Solve(rules, better is null ? null : spots => better(Plan(spots)), stop));

    private RollPlan Plan(IReadOnlyList<IReadOnlyList<Spot>> filled)
    {
        int[] copies = new int[types.Count];
        List<RollStrip> strips = [];
        for (int roll = 0; roll < rolls.Count; roll++)
            if (Strip(filled[roll], roll, copies) is { } layout)
                strips.Add(new(rolls[roll].Id, layout, roll));

        double advance = strips.Count == 0 ? 0 : strips.Max(s => s.Layout.Sheet.HeightMm);
        double area = rolls.Sum(r => r.WidthMm) * advance / 1e6;
        bool priced = terms.PricePerMetre > 0 || rolls.Any(r => r.PricePerM2 > 0);
        double cost = priced ? (rolls.Sum(r => r.PricePerM2 * r.WidthMm) * advance / 1e6) + (terms.PricePerMetre * advance / 1000) : area;
        IEnumerable<UnplacedPiece> tooLong = types.Where(t => copies[t.Index] < t.Piece.Quantity).Select(t => TooLong(t.Piece, t.Piece.Quantity - copies[t.Index]));
        return new(strips, [.. tooLarge, .. tooLong], advance, cost, area - strips.Sum(s => s.Layout.Placements.Sum(p => p.Place.Size.AreaM2)))
        {
            Rolls = [.. rolls.Select(r => r.Id)],
        };
    }

    // What lies on one roll, cut across where that is wanted; copies are numbered on.
    private SheetLayout? Strip(IReadOnlyList<Spot> spots, int roll, int[] copies)
    {
        bool edges = terms.Process is CutProcess.Guillotine;
        (IReadOnlyList<Spot> sections, IReadOnlyList<int> tops) = CutMarks.Of(spots, least, longestMark, many: edges)
            ?? CutMarks.Of(new RollChunks(types, fill.Widths[roll], longest).Lay(spots), least, longestMark, many: edges)
            ?? throw new InvalidOperationException("A section filled within the longest came out longer.");
        IReadOnlyList<Spot> kept = [.. sections.Where(s => s.Place.Top <= length)];
        if (kept.Count == 0)
            return null;

        int last = kept.Max(s => s.Place.Top);
        IReadOnlyList<int> used = [.. tops.TakeWhile(t => t < last), .. tops.SkipWhile(t => t < last).Take(1)];
        return Write(kept, used, roll, copies);
    }

    private SheetLayout Write(IReadOnlyList<Spot> spots, IReadOnlyList<int> tops, int roll, int[] copies)
    {
        RollStock stock = rolls[roll];
        IReadOnlyList<Placement> placements = [.. spots.OrderBy(s => s.Place.Y).ThenBy(s => s.Place.X)
            .Select(s => BoardWriter.Put(s, types[s.Type].Piece, stock.EdgeMarginMm, terms.LeadInMm, ++copies[s.Type]))];
        double last = placements.Max(p => p.Place.TopMm), end = Math.Max(last, Math.Min(Micro.Mm(length - gap), Micro.Mm(tops[^1] - gap)) + terms.LeadInMm);
        bool lengthened = least > 0;
        IReadOnlyList<double> cuts = [.. tops.Take(tops.Count - 1).Select(t => terms.LeadInMm + Micro.Mm(t) - (terms.GapMm / 2))];
        return new(new(stock.WidthMm, (lengthened ? end : last) + terms.LeadOutMm), stock.EdgeMarginMm, placements, 1, [], CutsAcrossMm: cuts);
    }

    private UnplacedPiece TooLarge(Piece piece)
    {
        double wide = rolls.Max(r => r.WidthMm - (2 * r.EdgeMarginMm));
        return new(
            piece.Id,
            piece.Quantity,
            Invariant($"{piece.Printed}{(piece.MayTurn ? ", may turn" : ", may not turn")}"),
            Invariant($"at most {wide:0.##} mm wide and {Micro.Mm(longest - gap):0.##} mm long; or panels"));
    }

    private UnplacedPiece OtherMedia(Piece piece) => new(
        piece.Id, piece.Quantity, Invariant($"{string.Join(" and ", rolls.Select(r => r.Id).Distinct(StringComparer.Ordinal))} on the press"), Invariant($"{terms.Media![piece.Id]}, the roll it must lie on"));

    private UnplacedPiece TooLong(Piece piece, int copies) => new(
        piece.Id, copies, Invariant($"no length left for {piece.Printed}"), Invariant($"a longer roll than {rolls.Min(r => r.LengthMm) / 1000:0.##} m"));
}
