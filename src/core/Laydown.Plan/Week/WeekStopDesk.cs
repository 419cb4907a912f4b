using Laydown.Plan.Calendar;
using Laydown.Plan.Upkeep;

namespace Laydown.Plan.Week;

/// <summary>Decides the long stops of a press in minutes of the plan, each once.</summary>
internal sealed class WeekStopDesk(WeekStand stand, IReadOnlyList<WeekSpan> open)
{
    // A search asks for the same stops again and again; beyond so many it begins anew.
    private const int MostKept = 20_000;
    private const int DayMinutes = 1440;

    // The week counts minutes that pass, so that any day will do to count from.
    private static readonly DateTimeOffset Epoch = DateTimeOffset.UnixEpoch;

    private readonly StopTerms terms = stand.Terms();
    private readonly Dictionary<(int, int), IReadOnlyList<StopWay>> kept = [];

    /// <summary>The ways through a stop, the cheapest first; none where no line stands longer than it may.</summary>
    internal IReadOnlyList<StopWay> Ways(int from, int to)
    {
        if (kept.TryGetValue((from, to), out IReadOnlyList<StopWay>? known))
            return known;
        if (kept.Count >= MostKept)
            kept.Clear();
        OpenSpan[] shifts = [.. open.Where(s => s.End > from - DayMinutes && s.Start < to + DayMinutes).Select(s => new OpenSpan(At(s.Start), At(s.End), 1))];
        return kept[(from, to)] = StopWays.Of(terms, new(At(from), At(to)), shifts, At(0));
    }

    /// <summary>Whole minutes of filling the lines that a way stores.</summary>
    internal int FillMinutes(StopWay way) => Whole(way.Stored.Sum(l => terms.Lines[l].FillMinutes));

    /// <summary>Whole minutes of filling them back.</summary>
    internal int BackMinutes(StopWay way) => Whole(way.Stored.Sum(l => terms.Lines[l].BackMinutes));

    /// <summary>The minute of an instant of a way.</summary>
    internal static int MinuteOf(DateTimeOffset at) => (int)Math.Floor((at - Epoch).TotalMinutes + 1e-6);

    private static DateTimeOffset At(int minute) => Epoch.AddMinutes(minute);

    private static int Whole(double minutes) => (int)Math.Ceiling(minutes - 1e-9);
}
