using Laydown.Colour.Spaces;

namespace Laydown.Colour.Fits;

/// <summary>One patch: read, predicted from the other patches, and the difference.</summary>
/// <param name="Id">Patch.</param>
/// <param name="Inks">Its inks, 0 to 1.</param>
/// <param name="Measured">What was read, mean of repeats.</param>
/// <param name="Predicted">What the model says without having seen the patch.</param>
/// <param name="DeltaE00">The difference.</param>
public sealed record PatchResidual(string Id, IReadOnlyList<double> Inks, Lab Measured, Lab Predicted, double DeltaE00);
