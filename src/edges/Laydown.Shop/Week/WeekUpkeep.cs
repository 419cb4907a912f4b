using Laydown.Plan.Upkeep;
using Laydown.Plan.Week;
using Laydown.Press.Machines;

namespace Laydown.Shop.Week;

/// <summary>From the week to the upkeep of a press: runs and care stand in both at the same minutes.</summary>
internal static class WeekUpkeep
{
    /// <summary>What the week has on a press.</summary>
    /// <param name="desk">The week.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="press">The press.</param>
    /// <param name="runs">Its runs.</param>
    public static WeekPressUse Of(WeekDesk desk, WeekPlan plan, PressDescription press, IReadOnlyList<Laydown.Plan.Runs.Run> runs)
    {
        WeekPlace[] places = [.. plan.Places.Where(p => p.PressId == press.Id).OrderBy(p => p.Start)];
        IReadOnlyList<PressUse> uses = [.. places.SelectMany(p => Uses(desk, p, runs.First(r => r.Id == p.RunId), press))];
        return new(uses, desk.KeepsCare(press.Id) ? Laid(desk, plan, press, places.Select(p => p.End).DefaultIfEmpty(0).Max()) : null);
    }

    // The week weighs the ink of a run, its set-up contained, evenly over the minutes it prints: so does this.
    private static IEnumerable<PressUse> Uses(WeekDesk desk, WeekPlace place, Laydown.Plan.Runs.Run run, PressDescription press)
    {
        IReadOnlyList<TankUse> inks = PressUses.InksOf(run, press);
        string name = PressUses.NameOf(run);
        WeekSpan[] parts = [.. place.Parts.Select(p => new WeekSpan(Math.Max(p.Start, place.Start), p.End)).Where(p => p.End > p.Start)];
        int minutes = parts.Sum(p => p.End - p.Start);
        return parts.Select(p => new PressUse(
            run.Id, name, desk.InstantOf(p.Start), desk.InstantOf(p.End), [.. inks.Select(i => new TankUse(i.TankId, 0, (i.SetUpMl + i.PrintedMl) * (p.End - p.Start) / minutes))]));
    }

    private static LaidCare Laid(WeekDesk desk, WeekPlan plan, PressDescription press, int until)
    {
        Dictionary<string, string> topUps = press.Tanks.ToDictionary(WeekCareOf.TopUpOf, t => t.Id, StringComparer.Ordinal);
        return new(desk.InstantOf(until), [.. plan.Care.Where(b => b.PressId == press.Id && b.CareId is not null).Select(b =>
        {
            string? tank = topUps.GetValueOrDefault(b.CareId!);
            return new LaidTask(tank is null ? b.CareId : null, tank, desk.InstantOf(b.Due ?? b.Start), desk.InstantOf(b.Start), desk.InstantOf(b.End), b.RunId, b.ByUse);
        })], [.. plan.Stops.Where(s => s.PressId == press.Id).Select(s => new LaidStop(desk.InstantOf(s.Start), desk.InstantOf(s.End)))]);
    }
}
