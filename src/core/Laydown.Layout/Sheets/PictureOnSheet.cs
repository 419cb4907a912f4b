using Laydown.Measures;

namespace Laydown.Layout.Sheets;

/// <summary>Where a piece's printed picture lies on its sheet, with the first printed face up.</summary>
/// <param name="placement">Where the piece lies.</param>
/// <param name="printed">Size of the whole printed picture, mm.</param>
/// <param name="mirrored">Whether it is printed mirrored on that face.</param>
public sealed class PictureOnSheet(Placement placement, SizeMm printed, bool mirrored)
{
    /// <summary>Shown part of the picture, mm from the picture's lower left corner.</summary>
    public RectMm Part { get; } = placement.Part ?? new(0, 0, printed.WidthMm, printed.HeightMm);

    /// <summary>A point of the picture, in mm of the sheet.</summary>
    public PointMm Of(PointMm inPicture)
    {
        double x = inPicture.XMm - Part.XMm;
        double y = inPicture.YMm - Part.YMm;
        if (mirrored)
            x = Part.WidthMm - x;
        (double across, double up) = placement.QuarterTurns switch
        {
            1 => (Part.HeightMm - y, x),
            2 => (Part.WidthMm - x, Part.HeightMm - y),
            3 => (y, Part.WidthMm - x),
            _ => (x, y),
        };
        return new(placement.Place.XMm + across, placement.Place.YMm + up);
    }

    /// <summary>A rectangle of the picture, in mm of the sheet.</summary>
    public RectMm Of(RectMm inPicture)
    {
        PointMm one = Of(new PointMm(inPicture.XMm, inPicture.YMm)), other = Of(new PointMm(inPicture.RightMm, inPicture.TopMm));
        return new(Math.Min(one.XMm, other.XMm), Math.Min(one.YMm, other.YMm), Math.Abs(one.XMm - other.XMm), Math.Abs(one.YMm - other.YMm));
    }
}
