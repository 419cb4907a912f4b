using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>What keeps upkeep from being planned: readings that cannot be, a press without a mode, impossible times.</summary>
public static class UpkeepFaults
{
    /// <summary>Most ink of one lot that is taken, ml: what a shop never has.</summary>
    public const double MostPackMl = 1_000_000;

    private const int MostLetters = 60;

    /// <summary>Every fault, each with JSON path; none when the upkeep can be planned.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="file">Where it came from.</param>
    public static IReadOnlyList<InputFault> Of(UpkeepRequest request, string file)
    {
        List<InputFault> faults = [.. CalendarFaults.Of(request.Calendar, file).Select(f => f with { Field = "/calendar" + f.Field })];
        if (request.Press.Modes.Count == 0)
            faults.Add(new(file, null, "/press/modes", "no mode", "at least one print mode"));
        faults.AddRange(request.Press.Tanks.Index().Where(t => !(t.Item.CapacityMl > 0) || !(t.Item.LevelMl >= 0 && t.Item.LevelMl <= t.Item.CapacityMl))
            .Select(t => new InputFault(file, null, Invariant($"/press/tanks/{t.Index}/levelMl"), Invariant($"{t.Item.LevelMl} ml"), Invariant($"0 to the capacity, {t.Item.CapacityMl} ml"))));
        faults.AddRange(CareFaults.Of(request.Press, file).Select(f => f with { Field = "/press" + f.Field }));
        faults.AddRange(OfState(request.Press, request.State, file).Select(f => f with { Field = "/state" + f.Field }));
        faults.AddRange(OfTimes(request, file));
        faults.AddRange(OfPacks(request.Packs, file));
        faults.AddRange(OfUses(request, file));
        faults.AddRange(OfLaid(request, file));
        return faults;
    }

    /// <summary>Faults of a press as read: levels outside the tank, tanks or rules it does not have, times that are not yet.</summary>
    /// <param name="press">The press.</param>
    /// <param name="state">As read.</param>
    /// <param name="file">Where it came from.</param>
    public static IEnumerable<InputFault> OfState(PressDescription press, PressState state, string file)
    {
        if (!string.Equals(state.PressId, press.Id, StringComparison.Ordinal))
            yield return new(file, null, "/pressId", state.PressId, press.Id);
        foreach ((int i, TankState read) in state.Tanks.Index())
        {
            string path = Invariant($"/tanks/{i}");
            if (press.Tanks.FirstOrDefault(t => t.Id == read.TankId) is not { } tank)
                yield return new(file, null, path + "/tankId", read.TankId, "one of " + string.Join(", ", press.Tanks.Select(t => t.Id)));
            else if (!(read.LevelMl >= 0 && read.LevelMl <= tank.CapacityMl))
                yield return new(file, null, path + "/levelMl", Invariant($"{read.LevelMl} ml in {tank.Id}"), Invariant($"0 to the capacity, {tank.CapacityMl} ml"));
            if (read.ReadAt > state.At)
                yield return new(file, null, path + "/readAt", Invariant($"{read.ReadAt:O}"), Invariant($"not after the reading, {state.At:O}"));
            if (read.Lot is { Length: > MostLetters })
                yield return new(file, null, path + "/lot", "a long number", Invariant($"at most {MostLetters} letters"));
            if (state.Tanks.Take(i).Any(t => t.TankId == read.TankId))
                yield return new(file, null, path + "/tankId", read.TankId, "each tank once");
        }

        PressCare care = press.Care ?? PressCare.Usual(press);
        foreach ((int i, CareCounter counter) in state.Counters.Index())
        {
            string path = Invariant($"/counters/{i}");
            if (care.Rules.All(r => r.Id != counter.RuleId))
                yield return new(file, null, path + "/ruleId", counter.RuleId, "one of " + string.Join(", ", care.Rules.Select(r => r.Id)));
            if (counter.LastDone > state.At)
                yield return new(file, null, path + "/lastDone", Invariant($"{counter.LastDone:O}"), Invariant($"not after the reading, {state.At:O}"));
            if (!(counter.PrintHours >= 0) || !(counter.Ml >= 0))
                yield return new(file, null, path, Invariant($"{counter.PrintHours} h, {counter.Ml} ml"), "at least 0");
        }

        if (state.LastUsed > state.At)
            yield return new(file, null, "/lastUsed", Invariant($"{state.LastUsed:O}"), Invariant($"not after the reading, {state.At:O}"));
    }

    /// <summary>Faults of ink on the shelf: lots without a number, amounts that cannot be, one lot twice at one place.</summary>
    /// <param name="packs">As written down.</param>
    /// <param name="file">Where it came from.</param>
    public static IEnumerable<InputFault> OfPacks(IReadOnlyList<InkPack> packs, string file)
    {
        foreach ((int i, InkPack pack) in packs.Index())
        {
            string path = Invariant($"/packs/{i}");
            if (string.IsNullOrWhiteSpace(pack.Lot) || pack.Lot.Length > MostLetters)
                yield return new(file, null, path + "/lot", string.IsNullOrWhiteSpace(pack.Lot) ? "no number" : "a long number", Invariant($"the number of the lot as printed on it, at most {MostLetters} letters"));
            if (!(pack.Ml >= 0 && pack.Ml <= MostPackMl))
                yield return new(file, null, path + "/ml", Invariant($"{pack.Ml} ml"), Invariant($"0 ml to {MostPackMl} ml"));
            if (pack.Place is { Length: > MostLetters })
                yield return new(file, null, path + "/place", "a long place", Invariant($"at most {MostLetters} letters"));
            if (packs.Take(i).Any(p => (p.Role, p.Lot, p.Place) == (pack.Role, pack.Lot, pack.Place)))
                yield return new(file, null, path + "/lot", Invariant($"{pack.Lot} again"), "each lot of an ink once at one place");
        }
    }

    private static IEnumerable<InputFault> OfTimes(UpkeepRequest request, string file)
    {
        if (request.State.At > request.From)
            yield return new(file, null, "/state/at", Invariant($"{request.State.At:O}, which is still to come"), Invariant($"not after {request.From:O}"));
        if ((request.From - request.State.At).TotalDays > UpkeepRequest.MostDays)
            yield return new(file, null, "/state/at", Invariant($"{request.State.At:O}"), Invariant($"within {UpkeepRequest.MostDays} days before {request.From:O}: read the press anew"));
        if (request.To <= request.From || (request.To - request.From).TotalDays > UpkeepRequest.MostDays)
            yield return new(file, null, "/to", Invariant($"{request.To:O}"), Invariant($"after {request.From:O}, at most {UpkeepRequest.MostDays} days"));
    }

    private static IEnumerable<InputFault> OfLaid(UpkeepRequest request, string file)
    {
        foreach ((int i, LaidTask task) in (request.Laid?.Tasks ?? []).Index())
        {
            string path = Invariant($"/laid/tasks/{i}");
            if (task.End <= task.Start)
                yield return new(file, null, path + "/end", Invariant($"{task.End:O}"), Invariant($"after its start, {task.Start:O}"));
            if (task.RuleId is null == task.TankId is null)
                yield return new(file, null, path, task.RuleId is null ? "neither a rule nor a tank" : "a rule and a tank", "a rule of care, or a tank that is topped up");
            if (task.RuleId is { } rule && request.Care.Rules.All(r => r.Id != rule))
                yield return new(file, null, path + "/ruleId", rule, "one of " + string.Join(", ", request.Care.Rules.Select(r => r.Id)));
            if (task.TankId is { } tank && request.Press.Tanks.All(t => t.Id != tank))
                yield return new(file, null, path + "/tankId", tank, "one of " + string.Join(", ", request.Press.Tanks.Select(t => t.Id)));
        }
    }

    private static IEnumerable<InputFault> OfUses(UpkeepRequest request, string file)
    {
        foreach ((int i, PressUse use) in request.Uses.Index())
        {
            string path = Invariant($"/uses/{i}");
            if (use.End <= use.Start)
                yield return new(file, null, path + "/end", Invariant($"{use.End:O}"), Invariant($"after its start, {use.Start:O}"));
            else if (request.Uses.Take(i).FirstOrDefault(u => u.Start < use.End && use.Start < u.End) is { } other)
                yield return new(file, null, path, Invariant($"{use.RunId}, {use.Start:O} to {use.End:O}"), Invariant($"a time outside {other.RunId}, {other.Start:O} to {other.End:O}"));
            foreach ((int n, TankUse ink) in use.Inks.Index())
            {
                if (request.Press.Tanks.All(t => t.Id != ink.TankId))
                    yield return new(file, null, Invariant($"{path}/inks/{n}/tankId"), ink.TankId, "one of " + string.Join(", ", request.Press.Tanks.Select(t => t.Id)));
                if (!(ink.SetUpMl >= 0 && ink.PrintedMl >= 0 && double.IsFinite(ink.SetUpMl + ink.PrintedMl)))
                    yield return new(file, null, Invariant($"{path}/inks/{n}"), Invariant($"{ink.SetUpMl} ml and {ink.PrintedMl} ml"), "at least 0 ml each");
            }
        }
    }
}
