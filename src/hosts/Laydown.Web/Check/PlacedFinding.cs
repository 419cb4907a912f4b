using Laydown.Measures;

namespace Laydown.Web.Check;

/// <summary>A finding that has a place on the page.</summary>
/// <param name="Number">Its number in the list beside the page.</param>
/// <param name="Severity">How bad it is; tells the kind of line.</param>
/// <param name="Place">Where, mm of the page from its lower left corner.</param>
public sealed record PlacedFinding(int Number, Severity Severity, RectMm Place);
