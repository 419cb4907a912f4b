namespace Laydown.Plan.Week;

/// <summary>Care that a press needs again and again, in which no run lies: a nozzle check, cleaning, a top-up.</summary>
/// <remarks>It is done before the run within which it would be due, or where the press opens again within that; a run longer than the interval pauses for it. A press that stands does it when it is due and somebody is there.</remarks>
/// <param name="Id">Its id, unique on the press.</param>
/// <param name="What">Its name for people.</param>
/// <param name="Minutes">How long it takes, 1 or more.</param>
/// <param name="EveryMinutes">Minutes that pass from one to the next at most; 0 where time does not count.</param>
/// <param name="Last">When it was last done, minutes since the start of the plan: 0 or less.</param>
/// <param name="Used">Share of its interval of use, such as ink or hours of printing, that passed since: at 1 it is due. <see cref="WeekRun.Uses"/> says what runs add.</param>
public sealed record WeekCare(string Id, string What, int Minutes, int EveryMinutes, int Last, double Used = 0);
