namespace Laydown.Plan.Week;

/// <summary>Something that would make a late run less late, reckoned by carrying it out.</summary>
/// <param name="What">It in a sentence.</param>
/// <param name="LateThen">Minutes the run is late then.</param>
/// <param name="OthersLater">Minutes that all other runs together are later then than now; under 0 where they gain.</param>
/// <param name="Cents">What the run would cost more than now, cents; under 0 where it would cost less, 0 where nothing changes.</param>
public sealed record WeekRemedy(string What, int LateThen, int OthersLater, int Cents = 0);
