namespace Laydown.Plan.Week;

/// <summary>A bench where runs are worked on after the press.</summary>
/// <param name="Id">The bench.</param>
/// <param name="Places">For each of its places, at which one run is worked on at a time, when it is worked: sorted, apart, also before the start of the plan; an empty list for always. At least one place.</param>
/// <param name="Name">Its name for people; empty for its id.</param>
public sealed record WeekBench(string Id, IReadOnlyList<IReadOnlyList<WeekSpan>> Places, string Name = "")
{
    /// <summary>What people call it.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string Called => Name.Length > 0 ? Name : Id;
}
