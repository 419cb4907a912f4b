using Laydown.Measures;

namespace Laydown.Shop.Layers;

/// <summary>Panels that were solved together.</summary>
/// <param name="ItemIds">Items that are now printed from their look.</param>
/// <param name="Faults">Why others are not.</param>
public sealed record SolvedPanels(IReadOnlyList<string> ItemIds, IReadOnlyList<InputFault> Faults);
