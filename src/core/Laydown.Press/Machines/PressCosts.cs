using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>What the press costs while it works.</summary>
/// <param name="PerHour">Machine rate for one hour.</param>
/// <param name="LoadSeconds">Loading and laying of one board, s.</param>
/// <param name="UnloadSeconds">Off-loading of one board, s.</param>
/// <param name="LoadOverlapPercent">Share of loading and off-loading done while the next sheet prints, percent.</param>
/// <param name="SetUpMinutes">Set-up of a run, minutes.</param>
/// <param name="SetUpInkMl">Ink used by nozzle checks and purging at each set-up, ml for each channel.</param>
/// <param name="Crew">People at the press while it works, for whom loading and off-loading times hold; null for one, and no second person is reckoned for sheets that one must not lift.</param>
public sealed record PressCosts(
    Money PerHour, double LoadSeconds, double UnloadSeconds, double LoadOverlapPercent, double SetUpMinutes, double SetUpInkMl,
    int? Crew = null);
