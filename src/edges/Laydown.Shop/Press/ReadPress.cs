using Laydown.Measures;
using Laydown.Plan.Upkeep;
using Laydown.Press.Machines;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Writes down what was read and done at a press: tank levels, care tasks, ink on the shelf.</summary>
/// <remarks>Ink used since the last reading is what was there and was poured less what is left; it counts for care tasks by ink.</remarks>
/// <param name="catalogue">What the shop has.</param>
/// <param name="book">Where it is written.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ReadPress(Catalogue catalogue, IPressCareBook book, TimeProvider clock)
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
        return await book.ChangeAsync(pressId, page => Next(press, page, reading, now), cancellation);
    }

    private static Reading<PressCarePage> Next(PressDescription press, PressCarePage? page, PressReading reading, DateTimeOffset now)
    {
        List<InputFault> faults = [.. Faults(press, reading)];
        PressCare care = press.Care ?? PressCare.Usual(press);
        PressState old = page?.State ?? new(press.Id, now, [.. press.Tanks.Select(t => new TankState(t.Id, t.LevelMl))], []);
        List<TankState> tanks = [.. press.Tanks.Select(t => reading.Tanks?.FirstOrDefault(r => r.TankId == t.Id) ?? Unread(t, old))];
        Dictionary<string, double> usedMl = press.Tanks.ToDictionary(t => t.Id, t => UsedMl(t, old, reading), StringComparer.Ordinal);
        HashSet<string> done = [.. reading.Done ?? []];
        PressState state = new(press.Id, now, tanks, [.. care.Rules.Select(r => Counter(r, old, done, usedMl, reading.PrintHours, now)).OfType<CareCounter>()], reading.PrintHours > 0 || page is null ? now : old.LastUsed ?? old.At);
        faults.AddRange(UpkeepFaults.OfState(press, state, "reading"));
        faults.AddRange((reading.Packs ?? []).Index().Where(p => !(p.Item.Ml >= 0 && double.IsFinite(p.Item.Ml))).Select(p => new InputFault("reading", null, Invariant($"/packs/{p.Index}/ml"), Invariant($"{p.Item.Ml} ml"), "at least 0 ml")));
        return faults.Count > 0 ? Reading.Refused<PressCarePage>(faults) : Reading.Of(new PressCarePage(state, reading.Packs ?? page?.Packs ?? []));
    }

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

    private static TankState Unread(Tank tank, PressState old) => old.Tanks.FirstOrDefault(t => t.TankId == tank.Id) ?? new(tank.Id, tank.LevelMl);

    private static double UsedMl(Tank tank, PressState old, PressReading reading)
    {
        double poured = reading.PouredMl?.GetValueOrDefault(tank.Id) ?? 0;
        return reading.Tanks?.FirstOrDefault(r => r.TankId == tank.Id) is { } read ? Math.Max(0, Unread(tank, old).LevelMl + poured - read.LevelMl) : 0;
    }

    private static CareCounter? Counter(CareRule rule, PressState old, HashSet<string> done, Dictionary<string, double> usedMl, double printHours, DateTimeOffset now)
    {
        if (done.Contains(rule.Id))
            return new(rule.Id, now);
        CareCounter? counter = old.Counters.FirstOrDefault(c => c.RuleId == rule.Id);
        double ml = rule.TankId is { } tank ? usedMl.GetValueOrDefault(tank) : usedMl.Values.Sum();
        return counter is null ? null : counter with { PrintHours = counter.PrintHours + printHours, Ml = counter.Ml + ml };
    }
}
