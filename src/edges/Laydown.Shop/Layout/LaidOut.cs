using Laydown.Layout.Sheets;

namespace Laydown.Shop.Layout;

/// <summary>Sheets of a run and how they lie on the belt.</summary>
/// <param name="Sheets">Layouts; at least one.</param>
/// <param name="Belt">Place on the belt.</param>
/// <param name="Unplaced">Pieces that found no place.</param>
internal sealed record LaidOut(IReadOnlyList<SheetLayout> Sheets, BeltPlace Belt, IReadOnlyList<UnplacedPiece> Unplaced);
