namespace Laydown.Layout.Patterns;

/// <summary>How one sheet is cut: bands across it, columns in a band, pieces in a column.</summary>
/// <param name="Counts">Copies by piece.</param>
/// <param name="Bands">Bands; each is a row of columns, each column a pile of ways to lie.</param>
internal sealed record CutPlan(int[] Counts, IReadOnlyList<IReadOnlyList<IReadOnlyList<Lie>>> Bands);
