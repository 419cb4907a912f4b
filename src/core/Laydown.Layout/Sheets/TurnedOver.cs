using Laydown.Measures;

namespace Laydown.Layout.Sheets;

/// <summary>Where things of a sheet lie once it is turned over, seen from the face that is up then.</summary>
/// <remarks>
/// The sheet's lower left corner stays the origin of the drawing, so a turn about a middle line maps x to W − x, or y to H − y; turned twice all
/// lies where it lay. A piece's own two pictures have their heads at the same edge of it: one walks around it.
/// </remarks>
public static class TurnedOver
{
    /// <summary>A point.</summary>
    /// <param name="point">On the sheet, mm.</param>
    /// <param name="sheet">The sheet, mm.</param>
    /// <param name="turn">How it is turned.</param>
    public static PointMm Of(PointMm point, SizeMm sheet, SheetTurn turn) => turn == SheetTurn.Sideways
        ? new(sheet.WidthMm - point.XMm, point.YMm)
        : new(point.XMm, sheet.HeightMm - point.YMm);

    /// <summary>A rectangle.</summary>
    /// <param name="place">On the sheet, mm.</param>
    /// <param name="sheet">The sheet, mm.</param>
    /// <param name="turn">How it is turned.</param>
    public static RectMm Of(RectMm place, SizeMm sheet, SheetTurn turn) => turn == SheetTurn.Sideways
        ? new(sheet.WidthMm - place.RightMm, place.YMm, place.WidthMm, place.HeightMm)
        : new(place.XMm, sheet.HeightMm - place.TopMm, place.WidthMm, place.HeightMm);

    /// <summary>A piece: its other picture is up then, with its head at the same edge of the piece.</summary>
    /// <param name="piece">The piece as it lay.</param>
    /// <param name="sheet">The sheet, mm.</param>
    /// <param name="turn">How it is turned.</param>
    public static Placement Of(Placement piece, SizeMm sheet, SheetTurn turn)
    {
        ArgumentNullException.ThrowIfNull(piece);
        double angle = ((turn == SheetTurn.Sideways ? 360 : 540) - piece.AngleDegrees) % 360;
        return piece with { Place = Of(piece.Place, sheet, turn), AngleDegrees = angle, BackUp = !piece.BackUp };
    }
}
