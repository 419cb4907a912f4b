using Laydown.Measures;

namespace Laydown.Formats.Layouts;

/// <summary>A line of a drawing of the belt.</summary>
/// <param name="Layer">Its layer: belt, zone open or shut, lay, pin, blank, order of loading.</param>
/// <param name="Points">Its corners, mm, y along the feed.</param>
/// <param name="Closed">Whether it returns to its first corner.</param>
/// <param name="IsFaint">Whether it is drawn pale.</param>
internal sealed record LaneLine(string Layer, IReadOnlyList<PointMm> Points, bool Closed, bool IsFaint = false);
