namespace Laydown.Shop.Week;

/// <summary>A bench in the week.</summary>
/// <param name="BenchId">The bench.</param>
/// <param name="Name">Its name.</param>
/// <param name="Places">How many runs are worked on at once at most.</param>
/// <param name="OpenMinutes">Time in which its places are worked, up to the end of the last step there, min; together where there are several.</param>
/// <param name="BusyMinutes">Time of that in which runs are worked on, min.</param>
/// <param name="Visits">Runs at it, by start; what was done before the week began left out.</param>
public sealed record WeekBenchView(string BenchId, string Name, int Places, int OpenMinutes, int BusyMinutes, IReadOnlyList<WeekVisitView> Visits);
