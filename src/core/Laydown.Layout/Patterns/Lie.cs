namespace Laydown.Layout.Patterns;

/// <summary>One way a piece may lie on a sheet whose first cuts go along it.</summary>
/// <param name="Piece">Index of the piece.</param>
/// <param name="Along">Its size along the first cut, steps of the grid.</param>
/// <param name="Across">Its size across the first cut, steps of the grid.</param>
/// <param name="RealAlong">The same in the unit of the problem.</param>
/// <param name="RealAcross">The same in the unit of the problem.</param>
/// <param name="Turned">Whether it lies turned.</param>
internal readonly record struct Lie(int Piece, int Along, int Across, int RealAlong, int RealAcross, bool Turned);
