using Laydown.Plan.Calendar;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>From runs to the spans in which a press prints.</summary>
public static class PressUses
{
    /// <summary>Ink of a run by tank; channels of one ink share it evenly.</summary>
    public static IReadOnlyList<TankUse> InksOf(Runs.Run run, PressDescription press) =>
        [.. press.Tanks.Select(tank =>
        {
            HashSet<string> fed = [.. press.Channels.Where(c => c.TankId == tank.Id).Select(c => c.Id)];
            double Share(Runs.InkUse ink) => ink.ChannelIds.Count == 0 ? 0 : (double)ink.ChannelIds.Count(fed.Contains) / ink.ChannelIds.Count;
            return new TankUse(tank.Id, run.Inks.Sum(i => i.SetUpMl * Share(i)), run.Inks.Sum(i => i.PrintedMl * Share(i)));
        }).Where(u => u.SetUpMl + u.PrintedMl > 0)];

    /// <summary>What a run is, for people: its stock and what is on it.</summary>
    public static string NameOf(Runs.Run run) => Invariant($"{run.StockId}, {string.Join(", ", run.Items.Select(i => i.Title).Distinct())}");

    /// <summary>Runs one after the other through the shifts, in the order given; a run that a shift's end cuts goes on in the next.</summary>
    /// <param name="runs">Runs with the earliest start of each; null for as soon as the one before is done.</param>
    /// <param name="press">The press.</param>
    /// <param name="shifts">Its shifts, earliest first.</param>
    /// <returns>The spans, and the runs for which the shifts were too short.</returns>
    public static (IReadOnlyList<PressUse> Uses, IReadOnlyList<string> Unplaced) Place(
        IEnumerable<(Runs.Run Run, DateTimeOffset? NotBefore)> runs, PressDescription press, IReadOnlyList<OpenSpan> shifts)
    {
        List<PressUse> uses = [];
        List<string> unplaced = [];
        DateTimeOffset now = shifts.Count > 0 ? shifts[0].Start : default;
        foreach ((Runs.Run run, DateTimeOffset? notBefore) in runs)
        {
            List<PressUse> parts = Parts(run, press, shifts, notBefore > now ? notBefore.Value : now);
            if (parts.Count == 0)
            {
                unplaced.Add(run.Id);
                continue;
            }

            uses.AddRange(parts);
            now = parts[^1].End;
        }

        return (uses, unplaced);
    }

    private static List<PressUse> Parts(Runs.Run run, PressDescription press, IReadOnlyList<OpenSpan> shifts, DateTimeOffset from)
    {
        double left = run.Time.TotalMinutes, all = left;
        List<PressUse> parts = [];
        foreach (OpenSpan shift in shifts.Where(s => s.End > from))
        {
            DateTimeOffset start = shift.Start > from ? shift.Start : from;
            double minutes = Math.Min(left, (shift.End - start).TotalMinutes);
            if (minutes <= 0)
                continue;
            bool first = parts.Count == 0;
            parts.Add(new(run.Id, NameOf(run), start, start.AddMinutes(minutes),
                [.. InksOf(run, press).Select(i => new TankUse(i.TankId, first ? i.SetUpMl : 0, i.PrintedMl * minutes / all))]));
            left -= minutes;
            if (left <= 1e-6)
                return parts;
        }

        return [];
    }
}
