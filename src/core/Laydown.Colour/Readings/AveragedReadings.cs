using Laydown.Measures;

namespace Laydown.Colour.Readings;

/// <summary>Readings with each patch once.</summary>
/// <param name="Set">The means, in the order in which the patches first come.</param>
/// <param name="Spreads">For each patch of the set its spread.</param>
/// <param name="Findings">The outliers, by patch.</param>
public sealed record AveragedReadings(ReadingSet Set, IReadOnlyList<RepeatSpread> Spreads, IReadOnlyList<Finding> Findings);
