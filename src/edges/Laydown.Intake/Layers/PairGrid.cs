using Laydown.Intake.Artwork;
using Laydown.Measures;
using Laydown.Shop.Artwork;
using Laydown.Shop.Layers;

namespace Laydown.Intake.Layers;

/// <summary>The pixels of a piece and the finished part of them, from the upper left corner.</summary>
/// <param name="Width">Pixels across, bleed included.</param>
/// <param name="Height">Pixels down, bleed included.</param>
/// <param name="Left">First column of the finished piece.</param>
/// <param name="Top">First row of the finished piece.</param>
internal sealed record PairGrid(int Width, int Height, int Left, int Top)
{
    /// <summary>Columns of the finished piece.</summary>
    public int FinishedWidth => Width - (2 * Left);

    /// <summary>Rows of the finished piece.</summary>
    public int FinishedHeight => Height - (2 * Top);

    /// <summary>The grid of a request: pixels as plates have them.</summary>
    public static PairGrid Of(PairRequest request)
    {
        PixelFrame frame = PixelFrame.OfFinishedPiece(new RenderRequest(
            request.DayPath, 1, request.Printed, request.BleedMm, request.Ppi, request.CmykProfilePath));
        return new(frame.Width, frame.Height, frame.Left, frame.Top);
    }

    /// <summary>Where a picture of a shape lies on the piece, or a fault where its shape is too different to guess.</summary>
    /// <param name="aspect">Width of the picture over its height, over 0.</param>
    /// <param name="placing">How it is to be laid.</param>
    /// <param name="file">File for faults.</param>
    /// <param name="page">Page for faults.</param>
    /// <param name="notes">Told where it is cropped.</param>
    public Reading<RectMm> Place(double aspect, PairPlacing placing, string file, int? page, PictureNotes notes)
    {
        const double Same = 1.005, Wild = 2;
        double piece = FinishedWidth / (double)FinishedHeight;
        double off = Math.Max(aspect / piece, piece / aspect);
        string found = Invariant($"{aspect:0.###} to 1"), wanted = Invariant($"{piece:0.###} to 1, the shape of the finished piece");
        if (placing == PairPlacing.Stretch || off <= Same)
            return Reading.Of(new RectMm(Left, Top, FinishedWidth, FinishedHeight));
        if (placing == PairPlacing.Careful)
        {
            if (off > Wild)
                return Reading.Refused<RectMm>(new InputFault(file, page, "width to height", found, wanted + "; or say fit, crop or stretch"));
            notes.Warn("picture-cropped", Invariant($"its shape differs from the piece; {100 * (1 - (1 / off)):0.#} % of it is cut off evenly."), found, wanted);
        }

        // Whole pixels, so that the edge of a picture that is fitted in stays sharp.
        bool byWidth = placing == PairPlacing.Fit ? aspect >= piece : aspect < piece;
        double width = byWidth ? FinishedWidth : Math.Round(FinishedHeight * aspect), height = byWidth ? Math.Round(FinishedWidth / aspect) : FinishedHeight;
        (width, height) = (Math.Max(1, width), Math.Max(1, height));
        return Reading.Of(new RectMm(
            Left + Math.Round((FinishedWidth - width) / 2), Top + Math.Round((FinishedHeight - height) / 2), width, height));
    }
}
