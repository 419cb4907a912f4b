namespace Laydown.Formats.Pdf;

/// <summary>The part of the graphics state that measuring needs.</summary>
/// <param name="ToMm">From current user space to mm of the page.</param>
/// <param name="LineWidth">Line width in user space.</param>
/// <param name="Stroke">Colour of strokes.</param>
/// <param name="Fill">Colour of fills.</param>
/// <param name="StrokeOverprint">Whether strokes overprint.</param>
/// <param name="FillOverprint">Whether fills overprint.</param>
/// <param name="TextMode">Text rendering mode, 0 to 7.</param>
internal sealed record WalkState(
    Affine ToMm, double LineWidth, PaintColour Stroke, PaintColour Fill, bool StrokeOverprint, bool FillOverprint, int TextMode)
{
    /// <summary>The state at the start of a page.</summary>
    public static WalkState Start(Affine toMm) => new(toMm, 1, new(ColourSpace.Grey, null), new(ColourSpace.Grey, null), false, false, 0);
}
