using Laydown.Measures;

namespace Laydown.Formats.Pdf;

/// <summary>One part of a path, flattened, in mm of the page.</summary>
internal sealed class SubPath
{
    /// <summary>Corners in order.</summary>
    public List<PointMm> Points { get; } = [];

    /// <summary>Whether it returns to its first corner.</summary>
    public bool Closed { get; set; }

    /// <summary>The corners without a last one that repeats the first.</summary>
    public (IReadOnlyList<PointMm> Points, bool Closed) Outline()
    {
        const double SameMm = 0.01;
        bool meets = Points.Count > 2 && Math.Abs(Points[0].XMm - Points[^1].XMm) < SameMm && Math.Abs(Points[0].YMm - Points[^1].YMm) < SameMm;
        return (meets ? Points[..^1] : Points, Closed || meets);
    }
}
