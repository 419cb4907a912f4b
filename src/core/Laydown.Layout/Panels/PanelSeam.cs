using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>Where two panels meet.</summary>
/// <param name="Under">Number of the panel that is hung first.</param>
/// <param name="Over">Number of the panel that lies over it, or beside it where they do not overlap.</param>
/// <param name="Upright">Whether the seam runs upright.</param>
/// <param name="OverlapMm">What both show, mm; 0 for a butt joint; below 0 for a gap.</param>
/// <param name="Zone">Where both show the same, or the gap, mm from the graphic's lower left corner; without width at a butt joint.</param>
public sealed record PanelSeam(int Under, int Over, bool Upright, double OverlapMm, RectMm Zone);
