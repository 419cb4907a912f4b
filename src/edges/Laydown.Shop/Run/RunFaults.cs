using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>What is said of a run that cannot be changed as asked.</summary>
internal static class RunFaults
{
    private const int MostName = 100, LeastReason = 3, MostReason = 400;

    /// <summary>A fault of a field of a run.</summary>
    public static InputFault Of(string runId, string field, string found, string wanted) => new(Invariant($"run {runId}"), null, field, found, wanted);

    /// <summary>What is wrong with the name and the reason that stay with a change; empty where both will do.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="by">Who changes it, without blanks at the ends.</param>
    /// <param name="reason">Why, without blanks at the ends.</param>
    /// <param name="what">What is taken, such as <c>this mode</c>.</param>
    public static IEnumerable<InputFault> NameAndReason(string runId, string by, string reason, string what)
    {
        if (by.Length is 0 or > MostName)
            yield return Of(runId, "by", by.Length == 0 ? "nobody" : "a long name", Invariant($"the name of who takes {what}, at most {MostName} letters"));
        if (reason.Length is < LeastReason or > MostReason)
            yield return Of(runId, "reason", Invariant($"{reason.Length} letters"), Invariant($"why, in {LeastReason} to {MostReason} letters"));
    }

    /// <summary>The fault of a run that was planned anew since a change of it began; null where it stands as it was.</summary>
    public static InputFault? Changed(RunRecord now, RunRecord before) => string.Equals(now.InputHash, before.InputHash, StringComparison.Ordinal)
        ? null
        : Of(now.Run.Id, "run", "one that was planned anew meanwhile", "the run this change began with; load the page again");
}
