using Laydown.Colour.Fits;
using Laydown.Colour.Readings;

namespace Laydown.Shop.Colour;

/// <summary>What came of a fit, nothing saved yet.</summary>
/// <param name="Readings">The readings.</param>
/// <param name="Print">The fitted print.</param>
/// <param name="Report">Its residuals.</param>
public sealed record FitOutcome(ReadingSet Readings, FittedPrint Print, FitReport Report);
