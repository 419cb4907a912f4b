using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Plan.Calendar;

/// <summary>What in benches cannot be: an id or a kind of work twice, no place, more places than people, hours that cannot be.</summary>
internal static class BenchFaults
{
    private const int MostPlaces = 20;

    /// <summary>Every fault, with JSON path.</summary>
    public static IEnumerable<InputFault> Of(ShopCalendar calendar, string file)
    {
        IReadOnlyList<WorkBench> benches = calendar.Benches ?? [];
        for (int i = 0; i < benches.Count; i++)
        {
            WorkBench bench = benches[i];
            string path = Invariant($"/benches/{i}");
            if (benches.Take(i).Any(b => b.Id == bench.Id))
                yield return new(file, null, path + "/id", bench.Id, "an id no other bench has");
            foreach (FinishingKind kind in bench.Kinds.Where((k, n) => bench.Kinds.Take(n).Contains(k) || benches.Take(i).Any(b => b.Kinds.Contains(k))).Distinct())
                yield return new(file, null, path + "/kinds", Invariant($"{kind}, which is done at {benches.First(b => b.Kinds.Contains(kind)).Id} already"), "each kind of work at one bench, once");
            if (bench.Kinds.Count == 0)
                yield return new(file, null, path + "/kinds", "an empty list", "what is done at it, at least one kind");
            if (bench.Places is < 1 or > MostPlaces)
                yield return new(file, null, path + "/places", Invariant($"{bench.Places}"), Invariant($"1 to {MostPlaces}"));
            foreach (InputFault fault in Hours(calendar, bench, file, path))
                yield return fault;
        }
    }

    private static IEnumerable<InputFault> Hours(ShopCalendar calendar, WorkBench bench, string file, string path)
    {
        if (bench.Shifts is null && bench.Extra is null && bench.Closed is null)
            yield break;
        ShopCalendar hours = new(calendar.TimeZone, bench.Shifts ?? calendar.Shifts, calendar.Holidays, bench.Extra ?? [], bench.Closed);
        string[] own = bench.Shifts is null ? ["/extra", "/closed"] : ["/shifts", "/extra", "/closed"];
        InputFault[] faults = [.. CalendarFaults.Of(hours, file).Where(f => own.Any(o => f.Field.StartsWith(o, StringComparison.Ordinal)))];
        foreach (InputFault fault in faults)
            yield return fault with { Field = path + fault.Field };
        if ((bench.Shifts ?? []).Any(s => s.PressIds is not null) || (bench.Extra ?? []).Concat(bench.Closed ?? []).Any(t => t.PressIds is not null))
            yield return new(file, null, path + "/shifts", "pressIds", "hours of the bench alone, without presses");
        int crew = bench.Shifts is null ? int.MaxValue : bench.Shifts.Select(s => s.Crew).Concat((bench.Extra ?? []).Select(e => e.Crew)).DefaultIfEmpty(0).Max();
        if (faults.Length == 0 && bench.Places > crew)
            yield return new(file, null, path + "/places", Invariant($"{bench.Places}, with {crew} at most in its shifts"), "no more places than people in its fullest shift (crew)");
    }
}
