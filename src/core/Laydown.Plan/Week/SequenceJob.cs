namespace Laydown.Plan.Week;

/// <summary>Work for one press, to be put in order with others.</summary>
/// <param name="Id">Unique within its problem.</param>
/// <param name="Length">How long it takes, set-up apart, in whole units of time (the planner: minutes); 0 or more.</param>
/// <param name="Due">When it should be ready, units since the start; may lie before the start.</param>
/// <param name="Weight">What a unit of lateness costs; 0 or more.</param>
public sealed record SequenceJob(string Id, int Length, int Due, int Weight);
