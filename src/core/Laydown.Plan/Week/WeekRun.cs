namespace Laydown.Plan.Week;

/// <summary>A run to be planned; times in whole minutes since the start of the plan.</summary>
/// <param name="Id">The run.</param>
/// <param name="Minutes">Minutes of printing by press; a press that is not named cannot print it. At least one.</param>
/// <param name="Traits">What decides its set-up.</param>
/// <param name="Release">When artwork and material are there.</param>
/// <param name="Due">When all steps should be done.</param>
/// <param name="Weight">What a minute of lateness costs, 0 to 1000.</param>
/// <param name="Steps">Steps after the press, in turn.</param>
/// <param name="MayPause">Whether it may be stopped when the press shuts and go on when it opens.</param>
/// <param name="Uses">Share of the interval of use that it adds to care of its press, by id of the care, 0 or more; null for none.</param>
public sealed record WeekRun(
    string Id, IReadOnlyDictionary<string, int> Minutes, WeekTraits Traits, int Release, int Due, int Weight, IReadOnlyList<WeekStep> Steps, bool MayPause = false,
    IReadOnlyDictionary<string, double>? Uses = null);
