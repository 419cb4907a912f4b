namespace Laydown.Plan.Log;

/// <summary>What the log needs to know of a run.</summary>
/// <param name="RunId">The run.</param>
/// <param name="PressId">Its press.</param>
/// <param name="ModeId">Its mode.</param>
/// <param name="StockId">Its stock.</param>
/// <param name="Due">Day it is due.</param>
/// <param name="Sheets">Sheets planned, at least 1.</param>
/// <param name="SetUpMinutes">Set-up as reckoned without the log, min.</param>
/// <param name="SheetsMinutes">Printing and handling of all sheets as reckoned without the log, min.</param>
/// <param name="SetUpInkMl">Ink at set-up, ml.</param>
/// <param name="SheetsInkMl">Ink of all sheets, ml.</param>
/// <param name="SheetM2">Mean area of one sheet, m².</param>
/// <param name="PieceM2">Mean printed area of the pieces on one sheet, m².</param>
/// <param name="ThickestMm">Most thickness the press takes, mm.</param>
/// <param name="ItemIds">Items on its sheets; null where they are not known.</param>
public sealed record LoggedRun(
    string RunId,
    string PressId,
    string ModeId,
    string StockId,
    DateOnly Due,
    int Sheets,
    double SetUpMinutes,
    double SheetsMinutes,
    double SetUpInkMl,
    double SheetsInkMl,
    double SheetM2,
    double PieceM2,
    double ThickestMm,
    IReadOnlyList<string>? ItemIds = null);
