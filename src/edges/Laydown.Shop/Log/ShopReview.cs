using Laydown.Measures;
using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>How a time went: figures and causes of remakes.</summary>
/// <param name="From">Its start.</param>
/// <param name="To">Its end.</param>
/// <param name="PressId">The press; null for all.</param>
/// <param name="Runs">Runs done in it.</param>
/// <param name="Figures">The figures that can be told.</param>
/// <param name="Causes">Causes of remakes, dearest first.</param>
/// <param name="Overlaps">Times in which the log says that a press printed two runs at once, earliest first.</param>
public sealed record ShopReview(
    DateTimeOffset From, DateTimeOffset To, string? PressId, int Runs, IReadOnlyList<Figure> Figures, IReadOnlyList<CauseShare> Causes,
    IReadOnlyList<RunOverlap> Overlaps);
