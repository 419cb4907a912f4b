using Laydown.Press.Stacks;

namespace Laydown.Plan.Orders;

/// <summary>What the customer wants to see; the stack is derived from it.</summary>
/// <param name="SeenThroughSheet">Whether the picture is looked at through the sheet (second surface).</param>
/// <param name="Lit">Whether a lamp stands behind it.</param>
/// <param name="DayNight">Whether one picture shows by day and another when lit: page 1 by day, page 2 lit.</param>
/// <param name="White">Where white comes from; null for no white.</param>
/// <param name="WhiteSeparation">The named separation, when that is the source.</param>
/// <param name="WhitePercent">Strength of the white, percent of full laydown.</param>
/// <param name="WhiteChokeMm">Choke of the white, mm.</param>
/// <param name="Clear">Whether clear is printed over all.</param>
public sealed record BuildWish(
    bool SeenThroughSheet,
    bool Lit,
    bool DayNight,
    WhiteSource? White,
    string? WhiteSeparation,
    double WhitePercent,
    double WhiteChokeMm,
    bool Clear);
