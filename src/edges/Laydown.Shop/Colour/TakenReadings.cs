using Laydown.Colour.Readings;

namespace Laydown.Shop.Colour;

/// <summary>Readings that were taken in.</summary>
/// <param name="FileName">Name of the kept file in the shop's readings, or null where nothing was kept.</param>
/// <param name="Readings">As read, repeats kept.</param>
/// <param name="Averaged">Each patch once, with outliers named.</param>
public sealed record TakenReadings(string? FileName, ReadingSet Readings, AveragedReadings Averaged);
