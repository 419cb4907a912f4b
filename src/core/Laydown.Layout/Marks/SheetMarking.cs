using Laydown.Layout.Sheets;

namespace Laydown.Layout.Marks;

/// <summary>Puts marks about the pieces of a sheet, outside every finished piece and clear of each other.</summary>
/// <remarks>A mark that finds no room is left out and named. The same sheet gives the same marks.</remarks>
public static class SheetMarking
{
    /// <summary>The marks of a sheet.</summary>
    /// <param name="sheet">The layout.</param>
    /// <param name="pieces">Its pieces that carry marks, in the order of the layout; others are only kept clear of.</param>
    /// <param name="bothFaces">Whether the sheet is printed on both faces: four crosses are put about the pieces.</param>
    public static SheetMarks Of(SheetLayout sheet, IReadOnlyList<MarkedPiece> pieces, bool bothFaces)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(pieces);
        if (pieces.Count == 0)
            return SheetMarks.None;
        FreeRoom room = new(sheet, pieces);
        foreach (MarkedPiece piece in pieces.Where(p => p.Wish.Finishing))
            FoldMarks.Add(piece, room);
        foreach (MarkedPiece piece in pieces.Where(p => p.Wish.Cut))
            CutMarks.Add(piece, room);
        if (pieces.FirstOrDefault(p => p.Wish.Register) is { } wished)
            DiscMarks.Add(sheet, wished.Wish, room);
        if (bothFaces)
            DiscMarks.AddCrosses(sheet, pieces[0].Wish, room);
        foreach (MarkedPiece piece in pieces.Where(p => p.Wish.Labels || p.Wish.Codes))
            LabelMarks.Add(piece, room);
        return new(room.Marks, room.LeftOut);
    }
}
