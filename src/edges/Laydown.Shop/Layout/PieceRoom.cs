using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Shop.Layout;

/// <summary>Room that a piece needs beyond what is printed of it: hems and pockets wider than the bleed, cut marks, a strip for label and code.</summary>
/// <remarks>Pieces are laid out with their room, as if it were printed; then the room is taken off again.</remarks>
internal static class PieceRoom
{
    /// <summary>Distance of a label from what it names, both sides, mm: own choice.</summary>
    private const double LabelOffMm = 2;

    /// <summary>The room of an item's pieces, at the edges of the upright picture.</summary>
    public static EdgeRoom Of(Item item)
    {
        EdgeRoom fold = FinishingPlaces.Allowance(item), room = fold.Beyond(item.BleedMm);
        if (item.Marks is not { } wish)
            return room;
        double strip = wish.StripMm > 0 && !Folds(fold.BottomMm, wish) ? wish.StripMm + LabelOffMm : 0;
        EdgeRoom cut = EdgeRoom.All(wish.CutRoomMm);
        return new(
            room.LeftMm + cut.LeftMm, room.BottomMm + Math.Max(strip, cut.BottomMm), room.RightMm + cut.RightMm, room.TopMm + cut.TopMm);
    }

    /// <summary>The piece with its room.</summary>
    public static Piece Grown(Piece piece, EdgeRoom room) => room.IsNone ? piece : piece with { Printed = Grown(piece.Printed, room) };

    /// <summary>The placement of a piece with its room, from the placement of what is printed.</summary>
    /// <param name="placement">Where what is printed lies.</param>
    /// <param name="room">The room, at the edges of the upright picture.</param>
    public static Placement Grown(Placement placement, EdgeRoom room)
    {
        ArgumentNullException.ThrowIfNull(placement);
        if (room.IsNone)
            return placement;

        // Each quarter turn brings the lower edge to the right, the right edge to the top.
        EdgeRoom lying = room;
        for (int i = 0; i < placement.QuarterTurns; i++)
            lying = new(LeftMm: lying.TopMm, BottomMm: lying.LeftMm, RightMm: lying.BottomMm, TopMm: lying.RightMm);
        RectMm place = placement.Place;
        return placement with { Place = new(place.XMm - lying.LeftMm, place.YMm - lying.BottomMm, place.WidthMm + lying.LeftMm + lying.RightMm, place.HeightMm + lying.BottomMm + lying.TopMm) };
    }

    /// <summary>The placement of what is printed, from the placement of a piece with its room.</summary>
    /// <param name="placement">Where the piece lies with its room.</param>
    /// <param name="room">The room.</param>
    public static Placement Shrunk(Placement placement, EdgeRoom room)
    {
        if (room.IsNone)
            return placement;
        SizeMm lying = placement.Turned ? placement.Place.Size.Turned() : placement.Place.Size;
        SizeMm printed = new(lying.WidthMm - room.LeftMm - room.RightMm, lying.HeightMm - room.BottomMm - room.TopMm);
        // Seen with its back up, what is left of the picture is on its right.
        PictureOnSheet whole = new(placement with { Part = null }, lying, mirrored: placement.BackUp);
        return placement with { Place = whole.Of(new RectMm(room.LeftMm, room.BottomMm, printed.WidthMm, printed.HeightMm)) };
    }

    // Label and code that fit in what is folded under need no strip of their own.
    private static bool Folds(double foldMm, MarkWish wish) =>
        foldMm - LabelOffMm >= wish.LabelMm * 1.6 && (!wish.Codes || foldMm - LabelOffMm >= 10);

    private static SizeMm Grown(SizeMm size, EdgeRoom room) => new(size.WidthMm + room.LeftMm + room.RightMm, size.HeightMm + room.BottomMm + room.TopMm);
}
