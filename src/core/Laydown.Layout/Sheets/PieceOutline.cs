using System.Text.Json.Serialization;
using Laydown.Measures;

namespace Laydown.Layout.Sheets;

/// <summary>The contour a piece is cut to, where a sheet was laid out by contours: the printed rectangles of such pieces may overlap.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="Outer">Its outer ring, mm from the lower left corner of its printed rectangle as it lies unturned; the last corner is joined to the first.</param>
/// <param name="Holes">Its holes.</param>
public sealed record PieceOutline(string PieceId, IReadOnlyList<PointMm> Outer, IReadOnlyList<IReadOnlyList<PointMm>> Holes)
{
    /// <summary>Its area without its holes, mm².</summary>
    [JsonIgnore]
    public double AreaMm2 => Area(Outer) - Holes.Sum(Area);

    /// <summary>All rings as they lie on a sheet, outer ring first, mm of the sheet.</summary>
    /// <param name="placement">Where the piece lies.</param>
    public IReadOnlyList<IReadOnlyList<PointMm>> On(Placement placement)
    {
        ArgumentNullException.ThrowIfNull(placement);
        (double x, double y, double w, double h) = (placement.Place.XMm, placement.Place.YMm, placement.Place.WidthMm, placement.Place.HeightMm);
        PointMm Lying(PointMm p) => placement.QuarterTurns switch
        {
            1 => new(x + w - p.YMm, y + p.XMm),
            2 => new(x + w - p.XMm, y + h - p.YMm),
            3 => new(x + p.YMm, y + h - p.XMm),
            _ => new(x + p.XMm, y + p.YMm),
        };
        return [.. Holes.Prepend(Outer).Select(r => (IReadOnlyList<PointMm>)[.. r.Select(Lying)])];
    }

    private static double Area(IReadOnlyList<PointMm> ring) =>
        Math.Abs(ring.Select((p, i) => (p.XMm * ring[(i + 1) % ring.Count].YMm) - (ring[(i + 1) % ring.Count].XMm * p.YMm)).Sum()) / 2;
}
