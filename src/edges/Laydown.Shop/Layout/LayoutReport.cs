namespace Laydown.Shop.Layout;

/// <summary>A layout with all that is to be said of it.</summary>
/// <param name="Sheets">Its sheets.</param>
/// <param name="Conflicts">What is wrong, numbered.</param>
/// <param name="Missing">Copies without a place.</param>
/// <param name="SheetCount">Sheets that go through the press.</param>
/// <param name="RollM">Length of roll used, m; null for boards.</param>
/// <param name="FillPercent">Share of all sheets under pieces, percent.</param>
/// <param name="OffcutMm">The largest usable rest, such as <c>610 × 1220 mm</c>; null for none.</param>
/// <param name="Locked">How many pieces are locked.</param>
/// <param name="Pieces">How many lie on the sheets drawn.</param>
/// <param name="Cost">What it costs; null while the ink is not measured yet, or where a piece has no place.</param>
/// <param name="CanBeSaved">Whether nothing stops it.</param>
public sealed record LayoutReport(
    IReadOnlyList<JudgedSheet> Sheets,
    IReadOnlyList<JudgedConflict> Conflicts,
    IReadOnlyList<MissingCopies> Missing,
    int SheetCount,
    double? RollM,
    double FillPercent,
    string? OffcutMm,
    int Locked,
    int Pieces,
    LayoutCost? Cost,
    bool CanBeSaved);
