namespace Laydown.Plan.Log;

/// <summary>A point at which a rule of a chart speaks.</summary>
/// <param name="Point">Number of the point, from 0: the last of those the rule looks at.</param>
/// <param name="Rule">The rule.</param>
/// <param name="What">What was seen, in a sentence.</param>
public sealed record ChartSignal(int Point, RunRule Rule, string What);
