namespace Laydown.Plan.Week;

/// <summary>Runs on presses.</summary>
/// <param name="Places">Runs by press, first to last.</param>
/// <param name="Cost">Weighted lateness, set-up and waits of runs put by hand; only for comparing plans of one problem.</param>
/// <param name="SetUpMinutes">Set-up in all, minutes.</param>
/// <param name="SetUpCents">Money lost to set-ups, cents.</param>
public sealed record WeekPlan(IReadOnlyList<WeekPlace> Places, long Cost, int SetUpMinutes, int SetUpCents)
{
    /// <summary>Steps at benches, by bench and start; none where no step has a bench.</summary>
    public IReadOnlyList<WeekVisit> Visits { get; init; } = [];

    /// <summary>Runs printed already, as they leave their benches.</summary>
    public IReadOnlyList<WeekReady> Printed { get; init; } = [];

    /// <summary>Care of the presses, by press and start, up to their last runs.</summary>
    public IReadOnlyList<WeekBlock> Care { get; init; } = [];

    /// <summary>Stops longer than the lines of a press may stand, by press and start, up to their last runs.</summary>
    public IReadOnlyList<WeekStop> Stops { get; init; } = [];

    /// <summary>A plan made from scratch that costs less, but not so much less that it was taken unasked; null where there is none.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public WeekPlan? Afresh { get; init; }

    /// <summary>Whether it was made from scratch though another stood.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool MadeAfresh { get; init; }

    /// <summary>How many runs are late.</summary>
    public int LateRuns => Places.Count(p => p.Late > 0);

    /// <summary>Order of the runs of each press.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Order =>
        Places.GroupBy(p => p.PressId, StringComparer.Ordinal).ToDictionary(g => g.Key, g => (IReadOnlyList<string>)[.. g.Select(p => p.RunId)], StringComparer.Ordinal);
}
