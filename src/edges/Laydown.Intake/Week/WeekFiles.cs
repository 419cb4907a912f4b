using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Plan.Week;
using Laydown.Shop.Week;

namespace Laydown.Intake.Week;

/// <inheritdoc/>
public sealed class WeekFiles : IWeekFiles
{
    /// <inheritdoc/>
    public Reading<WeekProblem> Week(string path) => LaydownJson.ReadFile<WeekProblem>(path).Then(problem =>
    {
        IReadOnlyList<InputFault> faults = [.. problem.Faults().Select(f => f.Split(": found ", 2) is [var field, var rest] && rest.Split("; wanted ", 2) is [var found, ..] parts
            ? new InputFault(Path.GetFileName(path), null, field, found.TrimEnd('.'), parts.Length > 1 ? parts[1].TrimEnd('.') : "runs and presses that belong together")
            : new InputFault(Path.GetFileName(path), null, "week", f, "a week that can be planned"))];
        return faults.Count > 0 ? Reading.Refused<WeekProblem>(faults) : Reading.Of(problem);
    });
}
