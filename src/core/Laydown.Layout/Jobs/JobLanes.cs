using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>Blanks in their lanes.</summary>
/// <param name="Place">Lanes, zones to open and to shut, order of loading; every lane names its blank, its feed and whether it lies turned.</param>
/// <param name="FeedMm">Length of the longest lane, all its blanks one behind the other, mm.</param>
/// <param name="PiecesPerHour">Blanks an hour: what the slower of printing and loading lets through; null where the belt tells no speed.</param>
public sealed record JobLanes(BeltPlace Place, double FeedMm, double? PiecesPerHour)
{
    /// <summary>Hours that printing or loading takes, whichever is longer; null where the belt tells no speed.</summary>
    internal static double? Hours(JobBelt belt, double feedMm, long blanks) =>
        belt.MetresPerHour is { } speed ? Math.Max(feedMm / 1000 / speed, blanks * belt.LoadSeconds / 3600) : null;
}
