namespace Laydown.Press.Stacks;

/// <summary>One ink layer.</summary>
/// <param name="Face">The face it is printed on.</param>
/// <param name="Group">What it is made of.</param>
/// <param name="Source">Where its picture comes from; null for colour.</param>
/// <param name="SeparationName">The named separation, when that is the source.</param>
/// <param name="ArtworkPage">Page of the item's artwork from 1 that it shows or is derived from.</param>
/// <param name="StrengthPercent">Strength, percent of full laydown, over 0 to 200.</param>
/// <param name="ChokeMm">Choke (positive) or spread (negative), mm.</param>
/// <param name="Mirrored">Whether it is printed mirrored (second surface); derived, never asked for.</param>
public sealed record Layer(
    SheetFace Face,
    InkGroup Group,
    WhiteSource? Source,
    string? SeparationName,
    int ArtworkPage,
    double StrengthPercent,
    double ChokeMm,
    bool Mirrored);
