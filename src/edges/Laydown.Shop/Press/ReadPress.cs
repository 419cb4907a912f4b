using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Upkeep;
using Laydown.Press.Machines;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Writes down what was read and done at a press: tank levels, care tasks, ink on the shelf.</summary>
/// <remarks>Ink used since the last reading is what was there and was poured less what is left; it counts for care tasks by ink.</remarks>
/// <param name="catalogue">What the shop has.</param>
/// <param name="book">Where it is written.</param>
/// <param name="clock">Tells the time.</param>
/// <param name="levels">Knows levels that the log holds, too; null where the book alone tells them.</param>
public sealed class ReadPress(Catalogue catalogue, IPressCareBook book, TimeProvider clock, TankLevels? levels = null)
{
    /// <summary>Writes it, all or nothing.</summary>
    /// <param name="pressId">The press.</param>
    /// <param name="reading">What was read and done.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task<Reading<PressCarePage>> WriteAsync(string pressId, PressReading reading, CancellationToken cancellation)
    {
        if (catalogue.Presses.FirstOrDefault(p => string.Equals(p.Id, pressId, StringComparison.Ordinal)) is not { } press)
            return Reading.Refused<PressCarePage>(new InputFault("reading", null, "pressId", pressId, "one of " + string.Join(", ", catalogue.Presses.Select(p => p.Id))));
        DateTimeOffset now = clock.GetUtcNow();
        IReadOnlyList<ReadTank> last = levels is null ? [] : await levels.OfAsync(press, cancellation);
        return await book.ChangeAsync(pressId, page => Next(press, page, reading, last, now), cancellation);
    }

    private Reading<PressCarePage> Next(PressDescription press, PressCarePage? page, PressReading reading, IReadOnlyList<ReadTank> last, DateTimeOffset now)
    {
        IReadOnlyList<InkPack> packs = reading.Packs ?? page?.Packs ?? [];
        IReadOnlyList<PouredInk> poured = reading.FromShelf ?? [];
        List<InputFault> faults = [.. Faults(press, reading), .. UpkeepFaults.OfPacks(packs, "reading"), .. InkPouring.Faults(press, packs, poured, Today(now))];
        if (reading.Shelf is { } seen && seen != ShelfMark.Of(page?.Packs ?? []))
            faults.Add(new("reading", null, "/shelf", "a shelf that was changed meanwhile", "the shelf that was looked at; load the page again"));
        PressCare care = press.Care ?? PressCare.Usual(press);
        PressState old = page?.State ?? new(press.Id, now, [], []);
        // A tank that nobody ever read is not written: its level stays that of the press's description, and is told so.
        List<TankState> tanks = [.. press.Tanks.Where(t => IsKnown(t, old, reading)).Select(t => Read(press, t, old, reading, packs, last.FirstOrDefault(l => l.TankId == t.Id), now))];
        Dictionary<string, double> usedMl = tanks.ToDictionary(t => t.TankId, t => UsedMl(press.Tanks.First(p => p.Id == t.TankId), old, reading, t.LevelMl), StringComparer.Ordinal);
        HashSet<string> done = [.. reading.Done ?? []];
        PressState state = new(press.Id, now, tanks, [.. care.Rules.Select(r => Counter(r, old, done, usedMl, reading.PrintHours, now)).OfType<CareCounter>()], reading.PrintHours > 0 || page is null ? now : old.LastUsed ?? old.At);
        faults.AddRange(UpkeepFaults.OfState(press, state, "reading"));
        return faults.Count > 0 ? Reading.Refused<PressCarePage>(faults) : Reading.Of(new PressCarePage(state, InkPouring.Left(press, packs, poured)));
    }

    private DateOnly Today(DateTimeOffset now) => DateOnly.FromDateTime((catalogue.Calendar is { } calendar ? new OpenTimes(calendar).At(now) : now.ToLocalTime()).Date);

    private static IEnumerable<InputFault> Faults(PressDescription press, PressReading reading)
    {
        PressCare care = press.Care ?? PressCare.Usual(press);
        foreach (string tank in (reading.Tanks ?? []).Select(t => t.TankId).Concat(reading.PouredMl?.Keys ?? []).Where(id => press.Tanks.All(t => t.Id != id)).Distinct())
            yield return new("reading", null, "/tanks", tank, "one of " + string.Join(", ", press.Tanks.Select(t => t.Id)));
        foreach ((string tank, double ml) in reading.PouredMl ?? new Dictionary<string, double>())
            if (!(ml >= 0 && double.IsFinite(ml)))
                yield return new("reading", null, Invariant($"/pouredMl/{tank}"), Invariant($"{ml} ml"), "at least 0 ml");
        if (!(reading.PrintHours >= 0 && reading.PrintHours <= 10_000))
            yield return new("reading", null, "/printHours", Invariant($"{reading.PrintHours} h"), "0 h to 10000 h");
        foreach (string id in (reading.Done ?? []).Where(id => care.Rules.All(r => r.Id != id)))
            yield return new("reading", null, "/done", id, "one of " + string.Join(", ", care.Rules.Select(r => r.Id)));
    }

    // A level that is read holds; where ink was poured and nobody read the level, it is what it was and what was poured.
    private static TankState Read(PressDescription press, Tank tank, PressState old, PressReading reading, IReadOnlyList<InkPack> packs, ReadTank? last, DateTimeOffset now)
    {
        TankState before = Unread(tank, old);
        List<PouredInk> poured = [.. (reading.FromShelf ?? []).Where(p => p.TankId == tank.Id)];
        TankState next = before;
        if (reading.Tanks?.FirstOrDefault(r => r.TankId == tank.Id) is { } read)
            next = (read is { Lot: null, Expires: null } ? read with { Lot = before.Lot, Expires = before.Expires } : read with { Lot = read.Lot is "" ? null : read.Lot ?? before.Lot }) with { ReadAt = read.ReadAt ?? now };
        else if (PouredMl(tank, reading) is > 0 and var ml)
            next = before with { LevelMl = (last?.LevelMl ?? before.LevelMl) + ml, ReadAt = now };
        bool named = reading.Tanks?.Any(r => r.TankId == tank.Id && (r.Lot, r.Expires) is not (null, null)) == true;
        return named || poured.Count == 0 ? next : InkPouring.Mixed(next, packs, UpkeepPlanner.RoleOf(press, tank.Id), poured, (last?.LevelMl ?? before.LevelMl) <= 0);
    }

    private static bool IsKnown(Tank tank, PressState old, PressReading reading) =>
        old.Tanks.Any(t => t.TankId == tank.Id) || reading.Tanks?.Any(t => t.TankId == tank.Id) == true || PouredMl(tank, reading) > 0;

    private static TankState Unread(Tank tank, PressState old) => old.Tanks.FirstOrDefault(t => t.TankId == tank.Id) is { } known
        ? known with { ReadAt = known.ReadAt ?? old.At }
        : new(tank.Id, tank.LevelMl);

    private static double PouredMl(Tank tank, PressReading reading) =>
        (reading.PouredMl?.GetValueOrDefault(tank.Id) ?? 0) + (reading.FromShelf ?? []).Where(p => p.TankId == tank.Id).Sum(p => p.Ml);

    private static double UsedMl(Tank tank, PressState old, PressReading reading, double levelMl) =>
        reading.Tanks?.Any(r => r.TankId == tank.Id) == true || PouredMl(tank, reading) > 0 ? Math.Max(0, Unread(tank, old).LevelMl + PouredMl(tank, reading) - levelMl) : 0;

    private static CareCounter? Counter(CareRule rule, PressState old, HashSet<string> done, Dictionary<string, double> usedMl, double printHours, DateTimeOffset now)
    {
        if (done.Contains(rule.Id))
            return new(rule.Id, now);
        CareCounter? counter = old.Counters.FirstOrDefault(c => c.RuleId == rule.Id);
        double ml = rule.TankId is { } tank ? usedMl.GetValueOrDefault(tank) : usedMl.Values.Sum();
        return counter is null ? null : counter with { PrintHours = counter.PrintHours + printHours, Ml = counter.Ml + ml };
    }
}
