using Laydown.Layout.Sheets;

namespace Laydown.Layout.Contours;

/// <summary>Contours on one roll, or on two side by side.</summary>
/// <param name="Rolls">What lies on each roll, in their order.</param>
/// <param name="Unplaced">Copies without a place, with the reason.</param>
public sealed record ContourRollPlan(IReadOnlyList<ContourLength> Rolls, IReadOnlyList<UnplacedPiece> Unplaced);
