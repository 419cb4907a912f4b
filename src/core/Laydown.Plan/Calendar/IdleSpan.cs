namespace Laydown.Plan.Calendar;

/// <summary>A span in which a press stands.</summary>
/// <param name="Start">When it was last used.</param>
/// <param name="End">When it is used again.</param>
public sealed record IdleSpan(DateTimeOffset Start, DateTimeOffset End)
{
    /// <summary>Hours that pass on the time line of UTC: a night in which clocks are put forward is an hour shorter, one in which they are put back an hour longer.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double Hours => (End - Start).TotalHours;
}
