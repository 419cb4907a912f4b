using Laydown.Measures;

namespace Laydown.Formats.Dxf;

/// <summary>A line to be written.</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Points">Its corners, mm, y upward; a closed one does not repeat its first.</param>
/// <param name="Closed">Whether it returns to its first corner.</param>
public sealed record DxfLine(string Layer, IReadOnlyList<PointMm> Points, bool Closed);
