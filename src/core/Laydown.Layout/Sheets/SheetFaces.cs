namespace Laydown.Layout.Sheets;

/// <summary>How the two printed faces of a sheet belong together.</summary>
/// <param name="Turn">How the sheet is turned over after its first face.</param>
/// <param name="OneFile">Whether fronts and backs share the sheet, so that both faces are printed from the files of the first (work-and-turn).</param>
/// <param name="RegisterMm">How far the two faces may lie apart, mm: the bleed of its pieces covers it; 0 where nothing was reckoned.</param>
public sealed record SheetFaces(SheetTurn Turn, bool OneFile, double RegisterMm);
