using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>One board, or one length of roll, with what lies on it.</summary>
/// <param name="StockId">Which stock.</param>
/// <param name="Size">The board, or the width and used length of the roll, mm.</param>
/// <param name="Repeats">How many are cut exactly like this; at least 1.</param>
/// <param name="Spots">What lies on it.</param>
/// <param name="OffcutsMm">Rests worth keeping, mm.</param>
/// <param name="FillPercent">Share under pieces, percent.</param>
/// <param name="CutsAcrossMm">On a roll, where it is cut across from edge to edge between two sections, mm from its start, ascending; else null.</param>
/// <param name="StartMm">Of two rolls side by side, where this one starts across the press, mm: 0 for the left one, which the right one follows; else null.</param>
public sealed record JobSheet(
    string StockId, SizeMm Size, int Repeats, IReadOnlyList<JobSpot> Spots, IReadOnlyList<RectMm> OffcutsMm, double FillPercent,
    IReadOnlyList<double>? CutsAcrossMm = null, double? StartMm = null);
