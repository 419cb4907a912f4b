namespace Laydown.Layout.Panels;

/// <summary>How a graphic larger than its stock is to be parted in panels.</summary>
/// <param name="OverlapLeastMm">Least that two neighbours show both, whole mm; 0 for a butt joint; below 0 for a gap, as at the frames of a frame wall, in which nothing of the graphic is shown. −1000 to 1000.</param>
/// <param name="OverlapMostMm">Most that two neighbours show both, whole mm; not under the least.</param>
/// <param name="Widths">How wide panels are to be.</param>
/// <param name="GivenMm">The widths, whole mm, overlaps contained, where they are given; the last lacks the fraction of a millimetre that the graphic has. Null otherwise. Of a grid or bricks: of the columns, the rows are then alike.</param>
/// <param name="LeastWidthMm">Least width of a panel, whole mm; never less than two overlaps.</param>
/// <param name="SeamsAtMm">Places that upright seams should lie at, mm from the left edge of the finished piece: posts, rows of rivets. Null for none.</param>
/// <param name="LevelSeamsAtMm">Places that level seams should lie at, mm from the lower edge of the finished piece: rails. Null for none.</param>
/// <param name="SeamSlackMm">How far the middle of a seam may lie from such a place, mm.</param>
/// <param name="SeamsOnlyThere">Whether seams may lie nowhere else; without, a seam elsewhere costs <paramref name="ElsewhereCost"/>.</param>
/// <param name="ElsewhereCost">Cost of a seam that lies at none of the wanted places; 0 or more.</param>
/// <param name="Pattern">Which way the graphic is parted.</param>
/// <param name="StaggerMm">Bricks: least distance between the seams of two columns that are neighbours, mm.</param>
/// <param name="FromRight">Whether panels are hung and numbered from the right; each lies over those hung before it.</param>
/// <param name="SeamBleedMm">At butt joints, what each panel shows beyond the seam, mm, trimmed off at the seam, so that no bare edge shows where cutting errs; 0 to 50, 0 for none. Only without overlap.</param>
public sealed record PanelWish(
    double OverlapLeastMm = 20,
    double OverlapMostMm = 20,
    PanelWidths Widths = PanelWidths.Equal,
    IReadOnlyList<double>? GivenMm = null,
    double LeastWidthMm = 100,
    IReadOnlyList<double>? SeamsAtMm = null,
    IReadOnlyList<double>? LevelSeamsAtMm = null,
    double SeamSlackMm = 5,
    bool SeamsOnlyThere = false,
    int ElsewhereCost = 10_000,
    PanelPattern Pattern = PanelPattern.Columns,
    double StaggerMm = 100,
    bool FromRight = false,
    double SeamBleedMm = 0);
