using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Raster.Masks;

namespace Laydown.Output.PressFiles;

/// <summary>Pixels that a layer is made in, and where a piece lies in them.</summary>
/// <param name="AcrossPpi">Pixels per inch across.</param>
/// <param name="Shape">How high a pixel is for its width.</param>
/// <param name="BleedMm">Bleed on each side of the finished piece, mm.</param>
/// <param name="FinishedHeightMm">Height of the finished piece, mm.</param>
internal sealed record PressPixels(double AcrossPpi, PixelShape Shape, double BleedMm, double FinishedHeightMm)
{
    private double AlongPpi => AcrossPpi * Shape.Width / Shape.Height;

    /// <summary>Square pixels of an item.</summary>
    public static PressPixels Of(Item item, double ppi) => new(ppi, PixelShape.Square, item.BleedMm, item.HeightMm);

    /// <summary>Dots of a mode, for an item; for a piece that lies on its side with both figures the other way round, as its picture stands upright.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The two resolutions share too little.</exception>
    public static PressPixels Of(Item item, int scanDpi, int feedDpi) => new(scanDpi, new(scanDpi, feedDpi), item.BleedMm, item.HeightMm);

    /// <summary>A distance in pixel widths.</summary>
    public double Across(double mm) => mm * AcrossPpi / 25.4;

    /// <summary>A place on the finished piece, from its lower left corner, in pixels of its picture with bleed, from the upper left; edges to the nearest pixel.</summary>
    public PixelRect Of(RectMm place)
    {
        int left = Nearest((place.XMm + BleedMm) * AcrossPpi), right = Nearest((place.RightMm + BleedMm) * AcrossPpi);
        int top = Nearest((BleedMm + FinishedHeightMm - place.TopMm) * AlongPpi), bottom = Nearest((BleedMm + FinishedHeightMm - place.YMm) * AlongPpi);
        return new(left, top, right - left, bottom - top);
    }

    // A place may reach far over the piece; only whole numbers that hold it are wanted.
    private static int Nearest(double mmPpi) => (int)Math.Clamp(Math.Floor((mmPpi / 25.4) + 0.5), -1e9, 1e9);
}
