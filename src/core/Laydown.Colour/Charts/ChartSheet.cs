using Laydown.Measures;

namespace Laydown.Colour.Charts;

/// <summary>One sheet of a chart, to scale.</summary>
/// <param name="Page">Number, from 1.</param>
/// <param name="Size">Sheet, mm.</param>
/// <param name="Patches">Patches in reading order: rows from the top, each from the left.</param>
/// <param name="Marks">Fiducials and edges of strips, printed full black.</param>
/// <param name="Labels">Names of rows and columns, title and cautions.</param>
public sealed record ChartSheet(
    int Page, SizeMm Size, IReadOnlyList<PlacedPatch> Patches, IReadOnlyList<RectMm> Marks, IReadOnlyList<ChartLabel> Labels);
