namespace Laydown.Press.Machines;

/// <summary>When a care task of a press is due: by hours, by hours of printing, by ink or by days, whichever comes first.</summary>
/// <param name="Id">Stable short name, unique on the press.</param>
/// <param name="Kind">What is done.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Minutes">How long it takes, minutes.</param>
/// <param name="By">Who does it, such as <c>operator</c> or <c>service engineer</c>.</param>
/// <param name="EveryHours">Hours that pass between two, over 0; null where hours do not count.</param>
/// <param name="EveryPrintHours">Hours of printing between two, over 0; null where they do not count.</param>
/// <param name="EveryMl">Ink through the lines between two, ml, over 0; of the tank where one is named, else of all; null where it does not count.</param>
/// <param name="EveryDays">Days of the calendar between two, at the same local time, over 0; null where they do not count.</param>
/// <param name="TankId">The tank it belongs to; null for the whole press.</param>
/// <param name="InkMlPerLine">Ink it uses, ml for each channel.</param>
/// <param name="WhileIdle">Whether it is due while the press stands, too; a rule that is not waits for the next shift.</param>
/// <param name="Source">Where the figures come from: a key of docs/sources.md, the maker's manual, or <c>common practice, no source</c>.</param>
public sealed record CareRule(
    string Id,
    CareKind Kind,
    string Name,
    double Minutes,
    string By,
    double? EveryHours = null,
    double? EveryPrintHours = null,
    double? EveryMl = null,
    int? EveryDays = null,
    string? TankId = null,
    double InkMlPerLine = 0,
    bool WhileIdle = false,
    string Source = FigureSource.CommonPractice);
