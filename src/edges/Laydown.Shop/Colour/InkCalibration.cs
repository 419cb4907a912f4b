using Laydown.Colour.Calibration;

namespace Laydown.Shop.Colour;

/// <summary>Curves and limits found from readings.</summary>
/// <param name="Readings">Name of the readings.</param>
/// <param name="Inks">The inks.</param>
/// <param name="Total">Largest sum of inks, or null where the chart has no ladder of overprints.</param>
public sealed record InkCalibration(string Readings, IReadOnlyList<CalibratedInk> Inks, FoundLimit? Total);
