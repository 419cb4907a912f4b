namespace Laydown.Bench;

/// <summary>One pair of pictures solved.</summary>
/// <param name="Pair">Its name.</param>
/// <param name="Megapixels">Pixels solved, millions.</param>
/// <param name="Day">By day, to what is aimed at: mean, 95th percentile, largest, ΔE00.</param>
/// <param name="Night">With the lamp on.</param>
/// <param name="DayToPicture">By day, to the picture as it came.</param>
/// <param name="NightToPicture">With the lamp on, to the picture as it came.</param>
/// <param name="GhostMean">What of the night picture is seen by day, weighted by the eye, mean.</param>
/// <param name="GhostP95">The same, 95th percentile.</param>
/// <param name="LeakP95">What the night layer would do by day were nothing done against it, 95th percentile.</param>
/// <param name="NightLightLostPercent">Night light given up for that, percent.</param>
/// <param name="UnreachablePercent">Share of the piece that cannot be reached, percent.</param>
/// <param name="LiftPercent">Day black point that was chosen, L*.</param>
/// <param name="NightExposure">Night exposure that was chosen.</param>
/// <param name="Seconds">Wall time from files to finished folder, s.</param>
/// <param name="CpuSeconds">Processor time, children included, s.</param>
/// <param name="PeakMb">Most memory held meanwhile, MiB; child processes are not counted.</param>
/// <param name="Checksum">SHA-256 of the planes.</param>
/// <param name="Reasons">Why places cannot be reached, each with its share.</param>
internal sealed record PanelRow(
    string Pair,
    double Megapixels,
    Shop.Layers.LookDifference Day,
    Shop.Layers.LookDifference Night,
    Shop.Layers.LookDifference DayToPicture,
    Shop.Layers.LookDifference NightToPicture,
    double GhostMean,
    double GhostP95,
    double LeakP95,
    double NightLightLostPercent,
    double UnreachablePercent,
    double LiftPercent,
    double NightExposure,
    double Seconds,
    double CpuSeconds,
    double PeakMb,
    string Checksum,
    IReadOnlyList<Shop.Layers.LookReason> Reasons);
