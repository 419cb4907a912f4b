namespace Laydown.Plan.Log;

/// <summary>What a run took, once it is done.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Started">When it was first started.</param>
/// <param name="Ended">When it was done.</param>
/// <param name="Good">Good sheets.</param>
/// <param name="Spoiled">Spoiled sheets.</param>
/// <param name="PressId">Its press.</param>
/// <param name="ModeId">Its mode.</param>
/// <param name="StockId">Its stock.</param>
/// <param name="Due">Day it was due.</param>
/// <param name="Minutes">Time at the press, breaks between stop and start left out, min.</param>
/// <param name="EstimatedMinutes">The same as reckoned without the log, for the sheets that were made, min.</param>
/// <param name="InkMl">Ink counted by the press, ml; null where a part of it was not read.</param>
/// <param name="EstimatedInkMl">Ink as reckoned for the sheets that were made, ml.</param>
/// <param name="SheetM2">Area of one sheet, m².</param>
/// <param name="PieceM2">Printed area of the pieces on one sheet, m².</param>
public sealed record RunActual(
    string RunId,
    DateTimeOffset Started,
    DateTimeOffset Ended,
    int Good,
    int Spoiled,
    string PressId,
    string ModeId,
    string StockId,
    DateOnly Due,
    double Minutes,
    double EstimatedMinutes,
    double? InkMl,
    double EstimatedInkMl,
    double SheetM2,
    double PieceM2)
{
    /// <summary>Whether it was done on the day it was due or before, by the calendar of the place it was logged in.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool OnTime => DateOnly.FromDateTime(Ended.DateTime) <= Due;

    /// <summary>Good and spoiled sheets.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public int Made => Good + Spoiled;
}
