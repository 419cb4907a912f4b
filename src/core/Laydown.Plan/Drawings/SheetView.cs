using Laydown.Measures;

namespace Laydown.Plan.Drawings;

/// <summary>Where the millimetres of a sheet lie in its drawing.</summary>
/// <param name="Sheet">The sheet, mm.</param>
/// <param name="Turned">Whether it is drawn lying: a quarter turn clockwise, its upper edge to the right.</param>
/// <param name="LeftPx">Left edge of the drawn sheet.</param>
/// <param name="TopPx">Upper edge of the drawn sheet.</param>
/// <param name="PxPerMm">Scale.</param>
internal sealed record SheetView(SizeMm Sheet, bool Turned, double LeftPx, double TopPx, double PxPerMm)
{
    internal double WidthPx => (Turned ? Sheet.HeightMm : Sheet.WidthMm) * PxPerMm;

    internal double HeightPx => (Turned ? Sheet.WidthMm : Sheet.HeightMm) * PxPerMm;

    /// <summary>Where the sheet's lower left corner lies.</summary>
    internal (double X, double Y) Origin => Turned ? (LeftPx, TopPx) : (LeftPx, TopPx + HeightPx);

    internal static SheetView Of(SizeMm sheet, double left, double top, double mostWide, double mostHigh)
    {
        bool turned = sheet.HeightMm > 1.3 * sheet.WidthMm;
        (double w, double h) = turned ? (sheet.HeightMm, sheet.WidthMm) : (sheet.WidthMm, sheet.HeightMm);
        return new(sheet, turned, left, top, Math.Min(mostWide / Math.Max(w, 1e-6), mostHigh / Math.Max(h, 1e-6)));
    }

    /// <summary>A rectangle of the sheet in the drawing.</summary>
    internal (double X, double Y, double W, double H) Of(RectMm r) => Turned
        ? (LeftPx + (r.YMm * PxPerMm), TopPx + (r.XMm * PxPerMm), r.HeightMm * PxPerMm, r.WidthMm * PxPerMm)
        : (LeftPx + (r.XMm * PxPerMm), TopPx + ((Sheet.HeightMm - r.TopMm) * PxPerMm), r.WidthMm * PxPerMm, r.HeightMm * PxPerMm);

    /// <summary>Which way a piece's upper edge points in the drawing; pieces turn counter-clockwise.</summary>
    internal (int X, int Y) UpOf(bool pieceTurned) => (Turned, pieceTurned) switch
    {
        (false, false) => (0, -1),
        (false, true) => (-1, 0),
        (true, false) => (1, 0),
        _ => (0, -1),
    };
}
