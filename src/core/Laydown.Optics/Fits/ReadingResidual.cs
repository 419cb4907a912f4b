using Laydown.Colour.Readings;

namespace Laydown.Optics.Fits;

/// <summary>One reading beside what the fitted optics say.</summary>
/// <param name="Id">Name of the patch.</param>
/// <param name="Behind">What stood behind.</param>
/// <param name="Build">What was asked to lie there.</param>
/// <param name="DeltaE">ΔE00 between reading and model, D50 and 2°; transmittance counts as reflectance does.</param>
/// <param name="DeltaY">Luminous reflectance or transmittance of the model less that of the reading, parts of one.</param>
public sealed record ReadingResidual(string Id, Behind Behind, OpticsBuild Build, double DeltaE, double DeltaY);
