using Laydown.Colour.Fits;

namespace Laydown.Shop.Colour;

/// <summary>Readings against a model.</summary>
/// <param name="Readings">Name of the readings.</param>
/// <param name="InkNames">Inks in the model's order.</param>
/// <param name="DeltaE00">Summary of the differences.</param>
/// <param name="Patches">Every reading, worst first.</param>
public sealed record ReadingScore(
    string Readings, IReadOnlyList<string> InkNames, ResidualSummary DeltaE00, IReadOnlyList<PatchResidual> Patches);
