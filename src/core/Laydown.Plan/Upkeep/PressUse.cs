namespace Laydown.Plan.Upkeep;

/// <summary>A span in which a press prints: a run, or the part of a run in one shift.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Name">What it is, for people.</param>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it ends, after its start.</param>
/// <param name="Inks">Ink of each tank.</param>
public sealed record PressUse(string RunId, string Name, DateTimeOffset Start, DateTimeOffset End, IReadOnlyList<TankUse> Inks)
{
    /// <summary>Hours it prints.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double Hours => (End - Start).TotalHours;
}
