using Laydown.Colour.Readings;

namespace Laydown.Optics.Fits;

/// <summary>One reading of one patch in the product's bands.</summary>
/// <param name="Id">Name of the patch; the same over every backing.</param>
/// <param name="Behind">What stood behind: black or white backing, or a lamp.</param>
/// <param name="Build">What was asked to lie there.</param>
/// <param name="Values">Reflectance at 45:0 with gloss left out, or transmittance of diffuse light seen straight on; 36 bands.</param>
public sealed record OpticsReading(string Id, Behind Behind, OpticsBuild Build, IReadOnlyList<double> Values);
