namespace Laydown.Plan.Log;

/// <summary>A time in which the log says that one press printed two runs at once.</summary>
/// <param name="PressId">The press.</param>
/// <param name="RunId">The run that began first.</param>
/// <param name="OtherRunId">The other.</param>
/// <param name="From">Where both are logged from.</param>
/// <param name="To">Where one of them ends.</param>
public sealed record RunOverlap(string PressId, string RunId, string OtherRunId, DateTimeOffset From, DateTimeOffset To)
{
    /// <summary>How long, minutes; over 0.</summary>
    public double Minutes => (To - From).TotalMinutes;
}
