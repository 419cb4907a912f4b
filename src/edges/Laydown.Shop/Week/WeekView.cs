namespace Laydown.Shop.Week;

/// <summary>The week as planned.</summary>
/// <param name="From">Its start.</param>
/// <param name="Runs">The runs, by press, first to last.</param>
/// <param name="Orders">Runs whose order is locked.</param>
/// <param name="SetUpMinutes">Set-up in all, min.</param>
/// <param name="LateRuns">How many runs are late.</param>
/// <param name="Chart">The week for the eye and the hand.</param>
/// <param name="CanGoBack">Whether a change by hand can be taken back.</param>
/// <param name="Maintenance">Maintenance windows of the presses up to the last run and a week at least; null for none.</param>
public sealed record WeekView(
    DateTimeOffset From, IReadOnlyList<WeekRunView> Runs, IReadOnlyList<IReadOnlyList<string>> Orders, int SetUpMinutes, int LateRuns,
    [property: System.Text.Json.Serialization.JsonIgnore] WeekChart Chart, bool CanGoBack = false,
    IReadOnlyList<WeekMaintenance>? Maintenance = null)
{
    /// <summary>Benches of the work after the press and what is at them; none in a shop whose calendar names none.</summary>
    public IReadOnlyList<WeekBenchView> Benches { get; init; } = [];

    /// <summary>Care of the presses up to their last runs, by press and start: nozzle checks, cleaning, top-ups, what long stops need.</summary>
    public IReadOnlyList<WeekCareView> Care { get; init; } = [];

    /// <summary>Stops longer than the lines of a press may stand, each with what is done about it and what that costs.</summary>
    public IReadOnlyList<WeekStopView> Stops { get; init; } = [];

    /// <summary>Runs that are printed and still go over benches.</summary>
    public IReadOnlyList<WeekPrintedView> Printed { get; init; } = [];

    /// <summary>What a plan from scratch would gain; null where it would gain too little, or nothing was searched.</summary>
    public WeekAfresh? Afresh { get; init; }

    /// <summary>What taking the last change back does beside moving runs; null for nothing.</summary>
    public string? BackWords { get; init; }
}
