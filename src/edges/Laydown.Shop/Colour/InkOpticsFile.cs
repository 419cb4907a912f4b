using Laydown.Colour.Readings;

namespace Laydown.Shop.Colour;

/// <summary>A file of readings of a chart of ink optics.</summary>
/// <param name="Path">Full path.</param>
/// <param name="Behind">What stood behind all its patches; unsaid where the file itself says it.</param>
public sealed record InkOpticsFile(string Path, Behind Behind);
