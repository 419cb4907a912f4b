using Laydown.Measures;

namespace Laydown.Colour.Charts;

/// <summary>A patch on its sheet.</summary>
/// <param name="Patch">The patch.</param>
/// <param name="Page">Sheet, from 1.</param>
/// <param name="Row">Row from the top, from 1.</param>
/// <param name="Column">Column from the left, from 1.</param>
/// <param name="Place">Place on the sheet, mm from its lower left corner.</param>
public sealed record PlacedPatch(ChartPatch Patch, int Page, int Row, int Column, RectMm Place);
