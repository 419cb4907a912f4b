using Laydown.Layout.Sheets;
using Laydown.Measures;
using NetTopologySuite.Geometries;

namespace Laydown.Core.Tests.Layout;

/// <summary>Judges layouts on its own: millimetres and a geometry library, nothing of the code that made them.</summary>
internal static class SheetChecker
{
    private const double SlackMm = 1e-6;
    private static readonly GeometryFactory Factory = new();

    public static IReadOnlyList<string> Faults(
        IReadOnlyList<Piece> pieces, IReadOnlyList<SheetLayout> sheets, double gapMm, bool guillotine, RectMm? bare = null) =>
        [.. sheets.SelectMany((s, i) => OfSheet(s, gapMm, guillotine, bare).Select(f => Invariant($"sheet {i + 1}: {f}"))), .. Demand(pieces, sheets), .. Sizes(pieces, sheets)];

    private static IEnumerable<string> OfSheet(SheetLayout sheet, double gapMm, bool guillotine, RectMm? bare)
    {
        RectMm inside = bare ?? new RectMm(0, 0, sheet.Sheet.WidthMm, sheet.Sheet.HeightMm).Grown(-sheet.EdgeMarginMm);
        Polygon printable = Of(inside.Grown(SlackMm));
        foreach (Placement p in sheet.Placements.Where(p => !printable.Covers(Of(p.Place))))
            yield return Invariant($"{p.PieceId} leaves the printable part");

        List<Polygon> places = [.. sheet.Placements.Select(p => Of(p.Place)), .. sheet.Offcuts.Select(Of)];
        for (int i = 0; i < places.Count; i++)
            for (int j = i + 1; j < places.Count; j++)
            {
                double area = places[i].Intersection(places[j]).Area;
                double apart = guillotine ? Apart(places[i].EnvelopeInternal, places[j].EnvelopeInternal) : places[i].Distance(places[j]);
                if (area > 1e-3 || apart < gapMm - SlackMm)
                    yield return Invariant($"{i} and {j} are {apart} mm apart and share {area} mm²");
            }

        if (guillotine && !CanBeCut([.. places.Select(p => p.EnvelopeInternal)]))
            yield return "no order of edge-to-edge cuts frees the pieces";
    }

    // A saw's kerf runs the whole way between two: they must be apart by it in at least one direction. Else their distance counts.
    private static double Apart(Envelope a, Envelope b) => Math.Max(
        Math.Max(a.MinX - b.MaxX, b.MinX - a.MaxX), Math.Max(a.MinY - b.MaxY, b.MinY - a.MaxY));

    private static IEnumerable<string> Demand(IReadOnlyList<Piece> pieces, IReadOnlyList<SheetLayout> sheets) => pieces
        .Select(p => (p.Id, p.Quantity, Placed: sheets.Sum(s => s.Repeats * s.Placements.Count(q => q.PieceId == p.Id))))
        .Where(p => p.Quantity != p.Placed).Select(p => Invariant($"{p.Id}: wanted {p.Quantity}, placed {p.Placed}"));

    private static IEnumerable<string> Sizes(IReadOnlyList<Piece> pieces, IReadOnlyList<SheetLayout> sheets)
    {
        foreach (Placement p in sheets.SelectMany(s => s.Placements))
        {
            Piece piece = pieces.Single(x => x.Id == p.PieceId);
            SizeMm wanted = p.Turned ? piece.Printed.Turned() : piece.Printed;
            if (p.Turned && !piece.MayTurn)
                yield return Invariant($"{p.PieceId} is turned");
            if (Math.Abs(p.Place.WidthMm - wanted.WidthMm) > SlackMm || Math.Abs(p.Place.HeightMm - wanted.HeightMm) > SlackMm)
                yield return Invariant($"{p.PieceId} has another size");
        }
    }

    // A set can be cut when some full cut meets no rectangle, and both sides can be cut.
    private static bool CanBeCut(IReadOnlyList<Envelope> boxes)
    {
        if (boxes.Count <= 1)
            return true;

        foreach (bool upright in (bool[])[true, false])
            foreach (double cut in boxes.Select(b => upright ? b.MaxX : b.MaxY))
            {
                List<Envelope> near = [.. boxes.Where(b => (upright ? b.MaxX : b.MaxY) <= cut + SlackMm)];
                List<Envelope> far = [.. boxes.Where(b => (upright ? b.MinX : b.MinY) >= cut - SlackMm)];
                if (near.Count > 0 && far.Count > 0 && near.Count + far.Count == boxes.Count)
                    return CanBeCut(near) && CanBeCut(far);
            }

        return false;
    }

    private static Polygon Of(RectMm r) => (Polygon)Factory.ToGeometry(new Envelope(r.XMm, r.RightMm, r.YMm, r.TopMm));
}
