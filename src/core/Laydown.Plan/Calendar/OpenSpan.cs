namespace Laydown.Plan.Calendar;

/// <summary>A span in which a press is worked.</summary>
/// <param name="Start">Its start, with the shop's offset from UTC at that instant.</param>
/// <param name="End">Its end, after the start.</param>
/// <param name="Crew">People at the presses; where spans of several presses are asked for together, of all of them.</param>
public sealed record OpenSpan(DateTimeOffset Start, DateTimeOffset End, int Crew)
{
    /// <summary>Hours that pass between start and end on the time line of UTC.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double Hours => (End - Start).TotalHours;
}
