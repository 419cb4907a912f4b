using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Strips;

/// <summary>Rectangles on a strip of a given width, as low as can be; or on two strips beside each other, so that the higher is as low as can be.</summary>
/// <param name="Width">Width of the strip, or of both with what parts them.</param>
/// <param name="Pieces">What is wanted; each fits a strip one way or the other.</param>
/// <param name="BarX">Where the bar that parts two strips starts.</param>
/// <param name="BarWidth">Its width, over 0; 0 for one strip.</param>
internal sealed record StripProblem(int Width, IReadOnlyList<RectPiece> Pieces, int BarX = 0, int BarWidth = 0)
{
    /// <summary>Width that pieces can lie on.</summary>
    internal int Usable => Width - BarWidth;

    /// <summary>Width of the strip, or of the wider of two.</summary>
    internal int Widest => BarWidth == 0 ? Width : Math.Max(BarX, Width - BarX - BarWidth);
}
