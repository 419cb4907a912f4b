using Laydown.Colour.Readings;
using Laydown.Measures;
using Laydown.Optics.Fits;
using Laydown.Press.Inks;

namespace Laydown.Shop.Colour;

/// <summary>What came of a fit of ink optics, nothing saved yet.</summary>
/// <param name="Optics">The optics.</param>
/// <param name="Fitted">The same with sheet and errors.</param>
/// <param name="Backings">The backings that were read over.</param>
/// <param name="Findings">What is doubtful.</param>
/// <param name="Notes">What had to be decided in taking the readings.</param>
/// <param name="Readings">The readings as they came.</param>
public sealed record InkOpticsOutcome(
    InkOptics Optics, FittedOptics Fitted, Backings Backings, IReadOnlyList<Finding> Findings, IReadOnlyList<string> Notes, IReadOnlyList<ReadingSet> Readings);
