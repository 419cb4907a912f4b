namespace Laydown.Layout.Rectangles;

/// <summary>Filled sheets, and what found no place.</summary>
/// <param name="Sheets">Sheets.</param>
/// <param name="Missing">Copies without a place, by piece; all 0 where the layout is whole.</param>
internal sealed record RectLayout(IReadOnlyList<RectSheet> Sheets, IReadOnlyList<int> Missing);
