namespace Laydown.Plan.Week;

/// <summary>Care that a press needs again and again, in which no run lies: a nozzle check, cleaning, a top-up.</summary>
/// <remarks>It is done before the run within which it would be due, or where the press opens again within that; a run longer than the interval pauses for it. A press that stands does it when it is due and somebody is there.</remarks>
/// <param name="Id">Its id, unique on the press.</param>
/// <param name="What">Its name for people.</param>
/// <param name="Minutes">How long it takes, 1 or more.</param>
/// <param name="EveryMinutes">Minutes that pass from one to the next at most; 0 where time does not count.</param>
/// <param name="Last">When it was last done, minutes since the start of the plan: 0 or less.</param>
/// <param name="Used">Share of its interval of use, such as ink or hours of printing, that passed since: at 1 it is due. <see cref="WeekRun.Uses"/> says what runs add.</param>
/// <param name="WhileIdle">Whether it is due while the press stands, too: where nobody is there then, it is done in the last open time before.</param>
/// <param name="Adds">Share of the interval of use that doing it adds to other care, by id, such as ink of a cleaning to a top-up; null for none.</param>
/// <param name="Whole">Where it is done in whole parts, such as bottles, the share of the interval that one gives back; 0 where all of it is given back.</param>
/// <param name="Room">What is given back at most, from the interval used up, as a share of it: 1 or more; means nothing without whole parts.</param>
public sealed record WeekCare(
    string Id, string What, int Minutes, int EveryMinutes, int Last, double Used = 0, bool WhileIdle = false, IReadOnlyDictionary<string, double>? Adds = null, double Whole = 0, double Room = 1)
{
    /// <summary>What doing it gives back, as a share of the interval: whole parts as far as there is room, else what there is room for.</summary>
    /// <param name="used">Share used when it is done.</param>
    internal double Back(double used)
    {
        if (Whole <= 0)
            return used;
        double room = Room - 1 + used, whole = Math.Floor((room / Whole) + 1e-9) * Whole;
        return whole > 0 ? whole : room;
    }
}
