using Laydown.Press.Inks;

namespace Laydown.Plan.Runs;

/// <summary>Ink of one channel in a run.</summary>
/// <param name="Role">The ink.</param>
/// <param name="ChannelIds">Channels that share it.</param>
/// <param name="PrintedMl">In the pictures, ml.</param>
/// <param name="SetUpMl">At set-up, ml.</param>
/// <param name="MeanCoveragePercent">Mean laydown over the printed area, percent of full.</param>
public sealed record InkUse(InkRole Role, IReadOnlyList<string> ChannelIds, double PrintedMl, double SetUpMl, double MeanCoveragePercent);
