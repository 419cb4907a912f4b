using Laydown.Measures;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Shop.Press;

/// <summary>Pours ink from the shelf into tanks, or says why that cannot be: another ink, a lot past its last day, more than is there, a tank that would run over.</summary>
internal static class InkPouring
{
    private const double SlackMl = 1e-6;

    /// <summary>The faults of what is poured, each with its path.</summary>
    public static IEnumerable<InputFault> Faults(PressDescription press, IReadOnlyList<InkPack> packs, IReadOnlyList<PouredInk> poured, DateOnly today)
    {
        List<InkPack> shelf = [.. packs];
        foreach ((int i, PouredInk ink) in poured.Index())
        {
            string path = Invariant($"/fromShelf/{i}");
            if (press.Tanks.All(t => t.Id != ink.TankId))
            {
                yield return new("reading", null, path + "/tankId", ink.TankId, "one of " + string.Join(", ", press.Tanks.Select(t => t.Id)));
                continue;
            }

            InkRole role = UpkeepPlanner.RoleOf(press, ink.TankId);
            List<InkPack> lot = [.. shelf.Where(p => p.Role == role && p.Lot == ink.Lot)];
            double there = lot.Sum(p => p.Ml);
            if (!(ink.Ml > 0 && ink.Ml <= UpkeepFaults.MostPackMl))
                yield return new("reading", null, path + "/ml", Invariant($"{ink.Ml} ml"), "over 0 ml");
            else if (lot.Count == 0)
                yield return new("reading", null, path + "/lot", ink.Lot, OnShelf(shelf, role, ink.TankId));
            else if (lot.Exists(p => p.Expires < today))
                yield return new("reading", null, path + "/lot", Invariant($"{ink.Lot}, to be poured until {lot.Min(p => p.Expires):yyyy-MM-dd}"), Invariant($"a lot that may still be poured on {today:yyyy-MM-dd}"));
            else if (ink.Ml > there + SlackMl)
                yield return new("reading", null, path + "/ml", Invariant($"{ink.Ml} ml of {ink.Lot}"), Invariant($"at most the {there:0.##} ml that are on the shelf; count the shelf first if more is there"));
            shelf = [.. Without(shelf, role, ink)];
        }
    }

    /// <summary>The shelf after pouring; lots that are empty go.</summary>
    public static IReadOnlyList<InkPack> Left(PressDescription press, IReadOnlyList<InkPack> packs, IReadOnlyList<PouredInk> poured) =>
        [.. poured.Aggregate((IEnumerable<InkPack>)packs, (left, ink) => Without(left, UpkeepPlanner.RoleOf(press, ink.TankId), ink)).Where(p => p.Ml > SlackMl)];

    /// <summary>Lot and last day of the ink in a tank after pouring: of the ink that must be used up first.</summary>
    public static TankState Mixed(TankState tank, IReadOnlyList<InkPack> packs, InkRole role, IEnumerable<PouredInk> poured, bool wasEmpty)
    {
        foreach (PouredInk ink in poured)
        {
            DateOnly? expires = packs.Where(p => p.Role == role && p.Lot == ink.Lot).Select(p => p.Expires).Min();

            // What was in the tank before stays the one to be used up first where nobody knows its last day, or it comes earlier.
            if (wasEmpty || (tank.Lot is null && tank.Expires is null) || expires < tank.Expires || (tank.Expires is null && expires is not null))
                tank = tank with { Lot = ink.Lot, Expires = expires };
            wasEmpty = false;
        }

        return tank;
    }

    private static IEnumerable<InkPack> Without(IEnumerable<InkPack> packs, InkRole role, PouredInk ink)
    {
        double left = ink.Ml;
        foreach (InkPack pack in packs)
        {
            double taken = pack.Role == role && pack.Lot == ink.Lot ? Math.Min(left, pack.Ml) : 0;
            left -= taken;
            yield return taken > 0 ? pack with { Ml = pack.Ml - taken } : pack;
        }
    }

    private static string OnShelf(IReadOnlyList<InkPack> packs, InkRole role, string tankId)
    {
        IReadOnlyList<string> lots = [.. packs.Where(p => p.Role == role && p.Ml > 0).Select(p => p.Lot).Distinct()];
        return lots.Count == 0 ? Invariant($"a lot of the ink of {tankId}, of which none is on the shelf; write it down first") : Invariant($"a lot of the ink of {tankId}: {string.Join(", ", lots)}");
    }
}
