namespace Laydown.Plan.Week;

/// <summary>Something that would make a late run less late, reckoned by carrying it out.</summary>
/// <param name="What">It in a sentence.</param>
/// <param name="LateThen">Minutes the run is late then.</param>
/// <param name="OthersLater">Minutes that all other runs together are later then than now; under 0 where they gain.</param>
public sealed record WeekRemedy(string What, int LateThen, int OthersLater);
