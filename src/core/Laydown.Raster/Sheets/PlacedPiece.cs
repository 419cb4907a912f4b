namespace Laydown.Raster.Sheets;

/// <summary>One piece on a sheet, in pixels of the press from the upper left corner. It may hang over the sheet's edges; what hangs over is cut.</summary>
/// <remarks>The shown part is cut from the upright picture, mirrored where it is to be, then turned, then laid down. Of pieces that overlap the later lies on top. Beyond the sheet all is bare.</remarks>
/// <param name="Id">Name of the piece.</param>
/// <param name="Picture">Which picture of the job it shows, from 0.</param>
/// <param name="Left">First column on the sheet.</param>
/// <param name="Top">First row on the sheet.</param>
/// <param name="Width">Columns on the sheet, as it lies.</param>
/// <param name="Height">Rows on the sheet, as it lies.</param>
/// <param name="CropLeft">First column of the upright picture that is shown.</param>
/// <param name="CropTop">First row of the upright picture that is shown.</param>
/// <param name="Turn">How it lies.</param>
/// <param name="Mirrored">Whether left and right are changed before it is turned.</param>
public sealed record PlacedPiece(
    string Id, int Picture, int Left, int Top, int Width, int Height, int CropLeft, int CropTop, QuarterTurn Turn, bool Mirrored)
{
    /// <summary>Whether its bare places leave what lies below them, ink for ink; else what lies on top hides what lies below.</summary>
    public bool LeavesBare { get; init; }

    /// <summary>Whether it lies on its side.</summary>
    internal bool OnItsSide => Turn is QuarterTurn.Left or QuarterTurn.Right;

    /// <summary>Columns of the upright picture that it shows.</summary>
    internal int CropWidth => OnItsSide ? Height : Width;

    /// <summary>Rows of the upright picture that it shows.</summary>
    internal int CropHeight => OnItsSide ? Width : Height;
}
