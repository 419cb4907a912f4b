namespace Laydown.Layout.Sheets;

/// <summary>Sheets laid out, and what could not be placed on any.</summary>
/// <param name="Sheets">Layouts, those with the earliest due date first, then the fullest; empty where nothing could be placed.</param>
/// <param name="Unplaced">Pieces that found no place; empty when all are placed.</param>
public sealed record LayoutResult(IReadOnlyList<SheetLayout> Sheets, IReadOnlyList<UnplacedPiece> Unplaced)
{
    /// <summary>Whether every copy of every piece has its place.</summary>
    public bool IsWhole => Unplaced.Count == 0;

    /// <summary>How many sheets go through the press.</summary>
    public int SheetCount => Sheets.Sum(s => s.Repeats);
}
