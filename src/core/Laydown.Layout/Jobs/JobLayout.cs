using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>A job laid out: it holds the job itself, so that it can be checked, drawn and cut by itself.</summary>
/// <param name="Job">What was wanted, contours as corners.</param>
/// <param name="Sheets">What lies where; empty where nothing could be placed.</param>
/// <param name="Unplaced">Copies without a place, with the reason.</param>
/// <param name="Cost">Sum of the prices of what is used.</param>
/// <param name="FillPercent">Area of the pieces placed over the area used, percent.</param>
/// <param name="Seed">Seed of the search.</param>
/// <param name="Iterations">Iterations it was allowed; null where time ended it.</param>
/// <param name="Lanes">Blanks in lanes on the belt, where the job has a belt; else null.</param>
public sealed record JobLayout(
    LayoutJob Job,
    IReadOnlyList<JobSheet> Sheets,
    IReadOnlyList<UnplacedPiece> Unplaced,
    double Cost,
    double FillPercent,
    int Seed,
    long? Iterations,
    JobLanes? Lanes = null);
