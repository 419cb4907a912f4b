using Laydown.Measures;

namespace Laydown.Plan.Log;

/// <summary>What one cause of remakes cost.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Times">How often.</param>
/// <param name="Pieces">How many pieces.</param>
/// <param name="Cost">What they cost together.</param>
/// <param name="Percent">Share of the cost of all remakes, percent.</param>
/// <param name="UpToPercent">Share of this cause and all dearer ones, percent.</param>
public sealed record CauseShare(RemakeCause Cause, int Times, int Pieces, Money Cost, double Percent, double UpToPercent);
