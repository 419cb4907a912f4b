using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>What the artwork of one item must serve: the order and the press as far as the checks need them.</summary>
/// <param name="Finished">Finished size, mm; both sides over 0.</param>
/// <param name="BleedMm">Bleed wanted on each side, mm; 0 for none.</param>
/// <param name="ArtworkScale">Scale the file is said to be drawn at: 1, or 10 for 1:10.</param>
/// <param name="ViewingDistanceM">From how far it is looked at, m; over 0.</param>
/// <param name="ScanDpi">Dots per inch across the belt of the likely mode.</param>
/// <param name="FeedDpi">Dots per inch along the feed of the likely mode.</param>
/// <param name="ContonePpi">Resolution of the contone press files of the likely mode, ppi.</param>
/// <param name="TotalInkLimitPercent">Largest sum of colour inks the print condition takes, percent of one full ink.</param>
/// <param name="PrintsWhite">Whether white is printed, whatever its source.</param>
/// <param name="WhiteSeparation">The named separation white is taken from; null where white has another source or is not printed.</param>
/// <param name="WhiteFromAlpha">Whether white is taken from the file's alpha.</param>
/// <param name="SecondPage">Whether page 2 is wanted as the lit picture of a day/night panel, or as the picture for a viewer on the back.</param>
/// <param name="ContourCut">Whether the piece is cut along a contour of the file.</param>
/// <param name="LastPage">Last page that a layer is made from, a mask picture included; 0 where only the pictures count.</param>
public sealed record CheckWish(
    SizeMm Finished,
    double BleedMm,
    int ArtworkScale,
    double ViewingDistanceM,
    int ScanDpi,
    int FeedDpi,
    int ContonePpi,
    double TotalInkLimitPercent,
    bool PrintsWhite,
    string? WhiteSeparation,
    bool WhiteFromAlpha,
    bool SecondPage,
    bool ContourCut,
    int LastPage = 0);
