using Laydown.Measures;

namespace Laydown.Press.Heat;

/// <summary>How warm a sheet becomes while one face is printed.</summary>
/// <param name="RiseK">Rise of the mean temperature of a spot right after its last passage, K; an upper bound.</param>
/// <param name="DifferenceK">
/// Difference of temperature from upper to lower side that bends as much as the true profile does, right after the last passage, K; an upper bound.
/// </param>
/// <param name="Figures">How each was computed.</param>
public sealed record SheetWarmth(double RiseK, double DifferenceK, IReadOnlyList<Figure> Figures);
