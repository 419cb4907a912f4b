using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class LanePlanLawTests
{
    public static IEnumerable<TheoryDataRow<int>> Seeds() => Enumerable.Range(1, 120).Select(s => new TheoryDataRow<int>(s));

    [Theory, MemberData(nameof(Seeds))]
    public void Uncovered_vacuum_equals_that_of_trying_everything(int seed)
    {
        Random chance = new(seed);
        Belt belt = Draw(chance);
        SizeMm blank = new(120 + chance.Next(700), 300);
        int count = 1 + chance.Next(5);
        Reading<BeltPlace> place = LanePlan.Solve("blank", blank, count, mayTurn: false, belt);
        (int lanes, double uncovered) = Everything(belt, blank.WidthMm, count);

        Assert.Equal(lanes > 0, place.IsTaken);
        if (lanes == 0)
            return;

        Assert.Equal(Math.Ceiling(count / (double)lanes), Math.Ceiling(count / (double)place.Value.Lanes.Count));
        Assert.Equal(uncovered, place.Value.UncoveredMm, 6);
        IsTrue(place.Value, belt, count);
    }

    // Tries every choice of lays for every number of lanes with every set of zones.
    private static (int Lanes, double Uncovered) Everything(Belt belt, double width, int count)
    {
        (double Rows, double Uncovered, int Lanes) best = (double.MaxValue, double.MaxValue, 0);
        for (int lays = 1; lays < 1 << belt.LaysMm.Count; lays++)
        {
            double[] starts = [.. belt.LaysMm.Where((_, i) => (lays >> i & 1) == 1)];
            bool apart = starts.Zip(starts.Skip(1)).All(p => p.Second - p.First >= width + belt.LaneGapMm);
            if (starts.Length > Math.Min(belt.MaxLanes, count) || !apart || starts[^1] + width > belt.WidthMm)
                continue;

            double rows = Math.Ceiling(count / (double)starts.Length);
            for (int set = 0; set < 1 << belt.Zones.Count; set++)
            {
                BeltZone[] open = [.. belt.Zones.Where((_, i) => (set >> i & 1) == 1)];
                double uncovered = open.Sum(z => z.WidthMm - starts.Sum(s => Under(z, s, width)));
                if (starts.All(s => IsHeld(belt, open, s, width)) && (rows < best.Rows || (rows == best.Rows && uncovered < best.Uncovered)))
                    best = (rows, uncovered, starts.Length);
            }
        }

        return (best.Lanes, best.Uncovered);
    }

    private static double Under(BeltZone zone, double start, double width)
    {
        double length = 0;
        for (double x = start; x < start + width; x++)
            if (x >= zone.StartMm && x < zone.StartMm + zone.WidthMm)
                length++;
        return length;
    }

    private static bool IsHeld(Belt belt, BeltZone[] open, double start, double width)
    {
        List<double> held = [];
        for (double x = start; x < start + width; x++)
            if (open.Any(z => x >= z.StartMm && x < z.StartMm + z.WidthMm))
                held.Add(x);

        return held.Count >= width * belt.HoldSharePercent / 100
            && held[0] - start <= belt.UnheldStripMm && start + width - held[^1] - 1 <= belt.UnheldStripMm;
    }

    private static void IsTrue(BeltPlace place, Belt belt, int count)
    {
        Assert.Equal(count, place.Lanes.Sum(l => l.Blanks));
        Assert.Equal(belt.Zones.Select(z => z.Id).Order(), place.OpenZones.Concat(place.ShutZones).Order());
        Assert.All(place.Lanes, l => Assert.Contains(l.StartMm, belt.LaysMm));
        Assert.All(place.Lanes, l => Assert.True(l.StartMm + l.WidthMm <= belt.WidthMm));
        Assert.All(place.Lanes.Zip(place.Lanes.Skip(1)), p => Assert.True(p.Second.StartMm - p.First.StartMm - p.First.WidthMm >= belt.LaneGapMm));
        BeltZone[] open = [.. belt.Zones.Where(z => place.OpenZones.Contains(z.Id))];
        Assert.All(place.Lanes, l => Assert.True(IsHeld(belt, open, l.StartMm, l.WidthMm)));
    }

    private static Belt Draw(Random chance)
    {
        List<BeltZone> zones = [];
        int at = chance.Next(40);
        for (int i = 0; i < 2 + chance.Next(5); i++)
        {
            int width = 150 + chance.Next(400);
            zones.Add(new(Invariant($"Z{i}"), at, width));
            at += width + chance.Next(2) * chance.Next(30);
        }

        double[] lays = [.. Enumerable.Range(0, 9).Select(_ => (double)chance.Next(at)).Distinct().Order()];
        return new(at, 4000, zones, lays, 1 + chance.Next(4), 10);
    }
}
