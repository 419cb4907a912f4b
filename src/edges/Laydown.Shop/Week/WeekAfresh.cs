using Laydown.Plan.Week;

namespace Laydown.Shop.Week;

/// <summary>What a plan made from scratch would be beside the one that stands.</summary>
/// <param name="Percent">How much less it weighs, lateness, set-up and what set-ups lose together: 1 to 5 percent.</param>
/// <param name="LateMinutesLess">Minutes that all runs together are late less; under 0 where they are late more.</param>
/// <param name="LateRunsLess">How many runs less are late.</param>
/// <param name="SetUpMinutesLess">Minutes of set-up less.</param>
/// <param name="Moves">How many runs would begin at another time or on another press.</param>
/// <param name="Runs">How many runs there are.</param>
public sealed record WeekAfresh(double Percent, int LateMinutesLess, int LateRunsLess, int SetUpMinutesLess, int Moves, int Runs)
{
    /// <summary>In a sentence or two.</summary>
    public string Words => Invariant(
        $"A plan from scratch would cost {Percent:0.#} % less: {Told(LateMinutesLess, "of lateness")}, {Told(SetUpMinutesLess, "of set-up")}. {Moves} of {Runs} runs would begin at another time.");

    /// <summary>What a plan tells of; null where none made from scratch is worth it.</summary>
    /// <param name="plan">The plan that stands.</param>
    internal static WeekAfresh? Of(WeekPlan plan)
    {
        if (plan.Afresh is not { } afresh)
            return null;
        Dictionary<string, WeekPlace> now = plan.Places.ToDictionary(p => p.RunId, StringComparer.Ordinal);
        return new(
            100 * (1 - ((double)afresh.Cost / plan.Cost)), Late(plan) - Late(afresh), plan.LateRuns - afresh.LateRuns, plan.SetUpMinutes - afresh.SetUpMinutes,
            afresh.Places.Count(p => (now[p.RunId].PressId, now[p.RunId].Start) != (p.PressId, p.Start)), plan.Places.Count);
    }

    private static int Late(WeekPlan plan) => plan.Places.Sum(p => p.Late) + plan.Printed.Sum(p => p.Late);

    private static string Told(int less, string what) => less == 0 ? Invariant($"as much {what}") : Invariant($"{WeekReasons.Words(Math.Abs(less))} {(less > 0 ? "less" : "more")} {what}");
}
