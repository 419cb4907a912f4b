using Laydown.Measures;

namespace Laydown.Plan.Runs;

/// <summary>How the press is set for a run; all on the safe side until the sheet is measured.</summary>
/// <param name="GapFromSheetMm">Free height wanted over the highest point, mm.</param>
/// <param name="HighestPointMm">Highest point reckoned with: thickness and tolerance, edge lift, ink, mm.</param>
/// <param name="HeadGap">Head height over the belt to set after measuring.</param>
/// <param name="Measure">What must be measured before release, in sentences.</param>
/// <param name="LampPercent">Lamp power, percent.</param>
/// <param name="DoseMjPerCm2">UV dose that the last layer gets, mJ/cm².</param>
/// <param name="SheetMassKg">Mass of one sheet or roll, kg.</param>
/// <param name="HoldDown">Hold-down in words: zones, force.</param>
/// <param name="Refusals">Why this set-up must not be released as it stands; empty when it may.</param>
/// <param name="FirstPieceChecks">What to check on the first piece.</param>
/// <param name="Cautions">Cautions that belong to this step.</param>
/// <param name="Figures">How the numbers were computed.</param>
public sealed record SetUp(
    double GapFromSheetMm,
    double HighestPointMm,
    HeadGap HeadGap,
    IReadOnlyList<string> Measure,
    double LampPercent,
    double DoseMjPerCm2,
    double SheetMassKg,
    string HoldDown,
    IReadOnlyList<string> Refusals,
    IReadOnlyList<string> FirstPieceChecks,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<Figure> Figures)
{
    /// <summary>What someone must see before the run is let go, in sentences; empty where nothing hangs on the vacuum.</summary>
    public IReadOnlyList<string> ToBeSeen { get; init; } = [];

    /// <summary>Height of the ink where it is highest, mm.</summary>
    public double InkMm { get; init; }
}
