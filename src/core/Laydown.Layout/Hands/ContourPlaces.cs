using Laydown.Geometry.Shapes;
using Laydown.Layout.Contours;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Between the search for contours and pieces under a person's hands.</summary>
internal static class ContourPlaces
{
    /// <summary>A spot of the search as a spot of the printed rectangle.</summary>
    /// <remarks>The search lays a point p of the picture at R p + shift, turned about the picture's lower left corner.</remarks>
    internal static HandSpot Hand(ContourSpot spot, Piece piece)
    {
        (double w, double h) = (piece.Printed.WidthMm, piece.Printed.HeightMm);
        int turns = (int)Math.Round(spot.AngleDegrees / 90, MidpointRounding.AwayFromZero) % 4;
        (double x, double y) = turns switch { 1 => (h, 0.0), 2 => (w, h), 3 => (0, w), _ => (0, 0) };
        return new(piece.Id, Math.Round(spot.XMm - x, 3), Math.Round(spot.YMm - y, 3), 90 * turns);
    }

    /// <summary>Copies of a piece as the search takes them. Turned on its head a piece still lies along flutes and grain.</summary>
    internal static ContourPiece Wanted(Piece piece, int copies, HandRules rules) => new(
        piece.Id, rules.Contours!.Drawn(piece.Id), copies, piece.MayTurn ? ContourAngles.QuarterTurns : ContourAngles.HalfTurns);

    /// <summary>A sheet, or several alike, with what lies on it kept out.</summary>
    internal static ContourStock Stock(string id, int? copies, double cost, IEnumerable<HandSpot> lying, HandRules rules) => new(
        id, Shape.Of(rules.Printable), copies, cost, 0, [.. rules.KeepOuts.Select(k => Shape.Of(k)), .. lying.Select(s => rules.LyingOf(s).Shape)]);

    /// <summary>A place on a sheet that keeps every distance, as the first packing of the search finds it; null where it finds none.</summary>
    internal static HandSpot? Free(HandSheet sheet, HandSpot spot, HandRules rules)
    {
        Piece piece = rules.Find(spot.PieceId)!;
        SizeMm room = rules.Printable.Size;
        if (!(room.WidthMm > 0 && room.HeightMm > 0))
            return null;
        ContourProblem problem = ContourProblem.On([Stock("sheet", 1, 0, sheet.Spots, rules)], rules.GapMm, Wanted(piece, 1, rules));
        ContourResult found = ContourLayout.Solve(problem, new SearchRules(1, 0), null, CancellationToken.None);
        return found.Sheets is [{ Spots: [var at] }] ? Hand(at, piece) with { Locked = spot.Locked } : null;
    }
}
