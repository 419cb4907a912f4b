using Laydown.Layout.Hands;
using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Shop.Layout;

/// <summary>Room that pieces take beyond what is printed, while they are laid out by hand: hems, pockets, cut marks, labels. The searches count the same.</summary>
/// <param name="rooms">Room of each item's pieces at the edges of the upright picture, by item; items without any are left out.</param>
public sealed class HandRooms(IReadOnlyDictionary<string, EdgeRoom> rooms)
{
    /// <summary>No room beyond what is printed.</summary>
    public static HandRooms None { get; } = new(new Dictionary<string, EdgeRoom>());

    /// <summary>Whether any piece takes more than what is printed.</summary>
    public bool Any => rooms.Count > 0;

    /// <summary>The rooms of a run's items; none where pieces are laid out by their contours, which reach into each other's rectangles.</summary>
    internal static HandRooms Of(IEnumerable<Item> items, bool byContours) => byContours
        ? None
        : new(items.Select(i => (i.Id, Room: PieceRoom.Of(i))).Where(i => !i.Room.IsNone).ToDictionary(i => i.Id, i => i.Room, StringComparer.Ordinal));

    /// <summary>Room of a piece.</summary>
    /// <param name="pieceId">The piece: of a panel the item's room holds.</param>
    public EdgeRoom Of(string pieceId) => rooms.GetValueOrDefault(SheetLayouts.ItemIdOf(pieceId), EdgeRoom.None);

    /// <summary>Layouts of what is printed, as layouts of pieces with their room.</summary>
    internal IReadOnlyList<SheetLayout> Grown(IReadOnlyList<SheetLayout> layouts) => !Any ? layouts
        : [.. layouts.Select(l => l with { Placements = [.. l.Placements.Select(p => PieceRoom.Grown(p, Of(p.PieceId)))] })];

    /// <summary>Layouts of pieces with their room, as layouts of what is printed.</summary>
    internal IReadOnlyList<SheetLayout> Printed(IReadOnlyList<SheetLayout> layouts) => !Any ? layouts
        : [.. layouts.Select(l => l with { Placements = [.. l.Placements.Select(p => PieceRoom.Shrunk(p, Of(p.PieceId)))] })];

    /// <summary>Printed size of a piece of the rules, without its room, mm.</summary>
    public SizeMm PrintedOf(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        EdgeRoom room = Of(piece.Id);
        return new(piece.Printed.WidthMm - room.LeftMm - room.RightMm, piece.Printed.HeightMm - room.BottomMm - room.TopMm);
    }

    /// <summary>What a conflict says where two pieces keep apart as printed, and only their rooms lie on each other.</summary>
    /// <param name="conflict">The conflict.</param>
    /// <param name="sheet">The sheet as it is printed.</param>
    /// <returns>Words to add, or nothing.</returns>
    internal string Words(LayoutConflict conflict, SheetLayout? sheet)
    {
        if (!Any || sheet is null || conflict.Kind is not (ConflictKind.Overlap or ConflictKind.Gap or ConflictKind.Margin or ConflictKind.OverEdge))
            return "";
        Placement[] concerned = [.. conflict.Spots.Select(s => sheet.Placements[s])];
        bool printedApart = concerned.Length < 2 || !concerned[0].Place.Overlaps(concerned[1].Place);
        return printedApart && concerned.Any(p => !Of(p.PieceId).IsNone) ? " Room for hems, pockets, cut marks and labels is counted." : "";
    }
}
