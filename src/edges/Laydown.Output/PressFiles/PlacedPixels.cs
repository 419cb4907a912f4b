namespace Laydown.Output.PressFiles;

/// <summary>One piece on one sheet, in pixels from the upper left corner.</summary>
/// <param name="ItemId">Whose picture it shows.</param>
/// <param name="Left">First column on the sheet.</param>
/// <param name="Top">First row on the sheet.</param>
/// <param name="Width">Columns on the sheet.</param>
/// <param name="Height">Rows on the sheet.</param>
/// <param name="Turned">Whether the picture lies turned by 90° counter-clockwise.</param>
/// <param name="CropLeft">First column of the upright picture that is shown.</param>
/// <param name="CropTop">First row of the upright picture that is shown.</param>
/// <param name="OnHead">Whether it is then turned by another 180°.</param>
/// <param name="LeavesBare">Whether its bare pixels leave what lies below them.</param>
/// <param name="BackUp">Whether it lies with its back toward the face printed first.</param>
internal sealed record PlacedPixels(
    string ItemId, int Left, int Top, int Width, int Height, bool Turned, int CropLeft, int CropTop, bool OnHead = false, bool LeavesBare = false, bool BackUp = false)
{
    /// <summary>Where in the stored planes the shown part starts: planes may be mirrored, then turned.</summary>
    /// <param name="columns">Columns of the upright picture.</param>
    /// <param name="mirrored">Whether the planes are mirrored.</param>
    public (int Left, int Top) StartIn(int columns, bool mirrored)
    {
        int width = Turned ? Height : Width;
        int left = mirrored ? columns - CropLeft - width : CropLeft;
        return Turned ? (CropTop, columns - left - width) : (left, CropTop);
    }
}
