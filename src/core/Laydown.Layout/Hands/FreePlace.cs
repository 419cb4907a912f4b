using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Hands;

/// <summary>Finds room for one piece on a sheet that is worked on by hand.</summary>
internal static class FreePlace
{
    /// <summary>A place that keeps every distance, of rectangles the lowest, then leftmost, as the piece lies or turned where it may; null where there is none.</summary>
    internal static HandSpot? For(HandSheet sheet, HandSpot spot, HandRules rules)
    {
        if (rules.Contours is not null)
            return ContourPlaces.Free(sheet, spot, rules);
        Piece piece = rules.Find(spot.PieceId)!;
        GrownSheet grown = GrownSheet.Of(rules);
        int gap = Micro.Up(rules.GapMm), w = Micro.Up(piece.Printed.WidthMm) + gap, h = Micro.Up(piece.Printed.HeightMm) + gap;
        MaximalRectangles bare = BareRests.AtEdges(sheet, grown);
        if (!bare.TryPlace(new PieceType(0, piece, w, h, piece.MayTurn && w != h), out Spot found))
            return null;
        (double x, double y) = grown.Corner(found.Place);
        return spot with { XMm = x, YMm = y, Angle = found.Turned ? 90 : 0 };
    }
}
