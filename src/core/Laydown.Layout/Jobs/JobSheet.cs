using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>One board, or one length of roll, with what lies on it.</summary>
/// <param name="StockId">Which stock.</param>
/// <param name="Size">The board, or the width and used length of the roll, mm.</param>
/// <param name="Repeats">How many are cut exactly like this; at least 1.</param>
/// <param name="Spots">What lies on it.</param>
/// <param name="OffcutsMm">Rests worth keeping, mm.</param>
/// <param name="FillPercent">Share under pieces, percent.</param>
public sealed record JobSheet(
    string StockId, SizeMm Size, int Repeats, IReadOnlyList<JobSpot> Spots, IReadOnlyList<RectMm> OffcutsMm, double FillPercent);
