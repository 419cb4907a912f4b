namespace Laydown.Plan.Runs;

/// <summary>What two people measured of the sheet in hand before a run is let go.</summary>
/// <param name="ThicknessMm">Thickness at five points of a board or blank (four corners and the middle), at three across a roll, mm.</param>
/// <param name="EdgeLiftMm">Highest edge or corner over the table under a straight edge, mm; 0 where all lie flat.</param>
/// <param name="MeasuredBy">Who measured.</param>
/// <param name="CheckedBy">Who checked it afterwards; another person.</param>
/// <param name="CheckedHighestMm">The highest thickness that the second person measured, mm.</param>
/// <param name="Seen">Whether what must be seen (<see cref="SetUp.ToBeSeen"/>) was seen.</param>
public sealed record MeasuredSheet(
    IReadOnlyList<double> ThicknessMm, double EdgeLiftMm, string MeasuredBy, string CheckedBy, double CheckedHighestMm, bool Seen);
