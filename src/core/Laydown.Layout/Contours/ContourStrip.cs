namespace Laydown.Layout.Contours;

/// <summary>A strip of fixed width whose used length is to be least: a roll, or a board whose rest is to be one large offcut.</summary>
/// <param name="WidthMm">Width across, along y, mm; over 0.</param>
/// <param name="EdgeMarginMm">Margin left free on all sides, mm; 0 or more.</param>
public sealed record ContourStrip(double WidthMm, double EdgeMarginMm = 0);
