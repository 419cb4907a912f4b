namespace Laydown.Press.Machines;

/// <summary>A print mode: resolution, passes, direction, drops, lamp power, speed.</summary>
/// <param name="Id">Stable short name, lower case with hyphens.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Quality">Grade.</param>
/// <param name="ScanDpi">Dots per inch across the belt.</param>
/// <param name="FeedDpi">Dots per inch along the feed.</param>
/// <param name="Passes">Scans over every row: P of the coverage invariant.</param>
/// <param name="NozzlesUsed">Nozzles used for each channel: J of the coverage invariant.</param>
/// <param name="FeedRows">Rows the sheet moves between scans: F of the coverage invariant.</param>
/// <param name="TwoWay">Whether it prints in both directions.</param>
/// <param name="SpeedMPerS">Carriage speed while printing, m/s.</param>
/// <param name="DropsPl">Drop volumes, smallest first, pl; the largest is full laydown.</param>
/// <param name="LampPercent">Lamp power, percent.</param>
/// <param name="ContonePpi">Resolution of the contone press files, ppi; divides both dpi.</param>
/// <param name="FeatherNozzles">Nozzles at either end of a block whose share of dots fades out, so that edges of swaths are soft; null or 0 for hard edges.</param>
public sealed record Mode(
    string Id,
    string Name,
    PrintQuality Quality,
    int ScanDpi,
    int FeedDpi,
    int Passes,
    int NozzlesUsed,
    int FeedRows,
    bool TwoWay,
    double SpeedMPerS,
    IReadOnlyList<double> DropsPl,
    double LampPercent,
    int ContonePpi,
    int? FeatherNozzles = null);
