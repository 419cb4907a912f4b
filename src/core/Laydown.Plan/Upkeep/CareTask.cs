using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>A care task with its time.</summary>
/// <param name="RuleId">The rule it follows.</param>
/// <param name="Kind">What is done.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Due">When it is due at the latest.</param>
/// <param name="At">When it is planned: between runs and within a shift where that can be.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="By">Who does it.</param>
/// <param name="TankId">The tank it belongs to, or null.</param>
/// <param name="InterruptsRun">The run that is paused for it, or null.</param>
/// <param name="LateHours">Hours between due and planned, 0 where it is in time: nobody is in the shop between.</param>
/// <param name="Because">Why then, in one line.</param>
/// <param name="Source">Where the interval comes from.</param>
/// <param name="Cautions">Cautions of the step.</param>
public sealed record CareTask(
    string RuleId,
    CareKind Kind,
    string Name,
    DateTimeOffset Due,
    DateTimeOffset At,
    double Minutes,
    string By,
    string? TankId,
    string? InterruptsRun,
    double LateHours,
    string Because,
    string Source,
    IReadOnlyList<string> Cautions);
