using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Boards;

/// <summary>Turns filled boards back into layouts in millimetres.</summary>
internal static class SheetWriter
{
    internal static IReadOnlyList<SheetLayout> Write(
        IReadOnlyList<FilledSheet> sheets, IReadOnlyList<PieceType> types, BoardArea area, BoardRules rules)
    {
        int[] copies = new int[types.Count];
        List<SheetLayout> layouts = [];
        foreach (FilledSheet sheet in Merged(sheets).OrderByDescending(s => s.UsedArea))
        {
            IReadOnlyList<Placement> placements = [.. sheet.Spots
                .OrderBy(s => s.Place.Y).ThenBy(s => s.Place.X)
                .Select(s => Put(s, types[s.Type].Piece, rules, ++copies[s.Type]))];

            // Copies are numbered on the first sheet; the repeats use up the numbers that follow.
            foreach (Spot spot in sheet.Spots)
                copies[spot.Type] += sheet.Repeats - 1;
            layouts.Add(new(rules.Sheet, rules.EdgeMarginMm, placements, sheet.Repeats, Offcuts(sheet, area, rules)));
        }

        return layouts;
    }

    /// <summary>A piece on its sheet, in mm.</summary>
    internal static Placement Put(Spot spot, Piece piece, double marginXMm, double marginYMm, int copy)
    {
        SizeMm size = spot.Turned ? piece.Printed.Turned() : piece.Printed;
        RectMm place = new(marginXMm + Micro.Mm(spot.Place.X), marginYMm + Micro.Mm(spot.Place.Y), size.WidthMm, size.HeightMm);
        return new(piece.Id, copy, place, spot.Turned, piece.Part);
    }

    private static Placement Put(Spot spot, Piece piece, BoardRules rules, int copy) =>
        Put(spot, piece, rules.EdgeMarginMm, rules.EdgeMarginMm, copy);

    private static IEnumerable<FilledSheet> Merged(IReadOnlyList<FilledSheet> sheets) =>
        sheets.GroupBy(s => string.Join(';', s.Spots.OrderBy(p => p.Place.Y).ThenBy(p => p.Place.X)
                .Select(p => Invariant($"{p.Type},{p.Place.X},{p.Place.Y},{p.Turned}"))), StringComparer.Ordinal)
            .Select(g => g.First() with { Repeats = g.Sum(s => s.Repeats) });

    private static IReadOnlyList<RectMm> Offcuts(FilledSheet sheet, BoardArea area, BoardRules rules)
    {
        int leastSide = Micro.Up(rules.OffcutLeastSideMm + rules.GapMm);
        return [.. sheet.Space.Leftovers(leastSide).Select(b => Offcut(b, area, rules))];
    }

    /// <summary>A bare rectangle as it comes off the board: the margin goes with it where it lies at an edge, the kerf is lost elsewhere.</summary>
    private static RectMm Offcut(Box bare, BoardArea area, BoardRules rules)
    {
        double margin = rules.EdgeMarginMm;
        double left = bare.X == 0 ? 0 : margin + Micro.Mm(bare.X), low = bare.Y == 0 ? 0 : margin + Micro.Mm(bare.Y);
        double right = bare.Right == area.Width ? rules.Sheet.WidthMm : margin + Micro.Mm(bare.Right) - rules.GapMm;
        double top = bare.Top == area.Height ? rules.Sheet.HeightMm : margin + Micro.Mm(bare.Top) - rules.GapMm;
        return new(left, low, right - left, top - low);
    }
}
