using Laydown.Layout.Hands;

namespace Laydown.Web.Http;

/// <summary>A layout sent to be judged, changed, finished or saved.</summary>
/// <param name="Sheets">The layout.</param>
/// <param name="Edit">What is done to it.</param>
/// <param name="Mark">Mark of the layout it began with.</param>
/// <param name="Seed">Seed of a search; 1 when left out.</param>
/// <param name="Seconds">Time of a search; 60 when left out.</param>
public sealed record LayoutBody(IReadOnlyList<HandSheet>? Sheets, HandEdit? Edit, string? Mark, int? Seed, double? Seconds);
