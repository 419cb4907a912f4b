using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

/// <summary>Different blanks in lanes, from a generator with seeds: 4 to 12 zones, 1 to 6 sheets, given order or any, bar or pins, each load side.</summary>
public sealed class LaneSetLawTests
{
    public static IEnumerable<TheoryDataRow<int>> Seeds() => Enumerable.Range(1, 200).Select(s => new TheoryDataRow<int>(s));

    [Theory, MemberData(nameof(Seeds))]
    public void The_place_costs_what_the_best_of_all_places_costs(int seed)
    {
        LaneCase drawn = LaneCase.Draw(seed);
        (long Uncovered, int Open, long Reach)? best = new LaneBruteForce(drawn.Belt, drawn.Widths, drawn.AnyOrder).Best();
        Reading<BeltPlace> place = LanePlan.Solve("run", drawn.Blanks, drawn.AnyOrder, drawn.Belt);

        // The bench reads the same cases and values from a table.
        string[] kept = LayoutData.Rows("lanes/lanes.csv").Single(r => r[0] == Invariant($"{seed}"));
        string[] tried = best is { } b ? [Invariant($"{b.Uncovered}"), Invariant($"{b.Open}"), Invariant($"{b.Reach}")] : ["", "", ""];
        Assert.Equal(tried, kept[^3..]);
        Assert.Equal(drawn.Widths.Select(w => Invariant($"{w}")), kept[10].Split(' '));
        Assert.Equal(best is not null, place.IsTaken);
        if (best is null)
            return;

        BeltPlace found = place.Value;
        double reach = found.Lanes.Sum(l => drawn.Belt.Side is LoadSide.Far ? drawn.Belt.WidthMm - l.StartMm - l.WidthMm : l.StartMm);
        Assert.Equal((best.Value.Uncovered, best.Value.Open, best.Value.Reach), ((long)found.UncoveredMm, found.OpenZones.Count, (long)reach));
        Assert.Equal(found.UncoveredMm, Uncovered(found, drawn.Belt), 6);
    }

    [Fact]
    public void The_generator_draws_cases_that_can_be_laid_and_cases_that_cannot()
    {
        int taken = Enumerable.Range(1, 200).Select(LaneCase.Draw).Count(c => LanePlan.Solve("run", c.Blanks, c.AnyOrder, c.Belt).IsTaken);
        Assert.InRange(taken, 80, 180);
    }

    [Fact]
    public void Lanes_tell_their_blanks_reach_from_lay_to_lay_and_keep_the_order_given()
    {
        Belt belt = new(1600, 3050, Zones(8, 200), [.. Enumerable.Range(0, 33).Select(i => i * 50.0)], 4, Side: LoadSide.Origin);
        BeltPlace place = LanePlan.Solve("run", [new("a", new(330, 500), 8), new("b", new(500, 300), 4), new("c", new(210, 700), 3)], anyOrder: false, belt).Value;

        // Eight of 500 mm are 4000 mm in one lane; the fourth lane halves that, and three of 700 mm are 2100 mm.
        Assert.Equal(["a", "a", "b", "c"], place.Lanes.Select(l => l.BlankId!));
        Assert.Equal([4, 4, 4, 3], place.Lanes.Select(l => l.Blanks));
        Assert.Equal([4, 3, 2, 1], place.Lanes.Select(l => l.Loaded));
        Assert.All(place.Lanes, l => Assert.True(l.EndMm >= l.StartMm + l.WidthMm && l.EndMm % 50 == 0 && l.EndMm - l.StartMm - l.WidthMm < 50));
        Assert.All(place.Lanes.Zip(place.Lanes.Skip(1)), p => Assert.True(p.First.EndMm <= p.Second.StartMm));
    }

    [Fact]
    public void Blanks_turn_where_the_longest_lane_is_shorter_for_it()
    {
        Belt belt = new(1600, 3050, [], [.. Enumerable.Range(0, 33).Select(i => i * 50.0)], 2);
        BeltPlace place = LanePlan.Solve("run", [new("a", new(300, 700), 6, MayTurn: true), new("b", new(400, 200), 5)], anyOrder: true, belt).Value;
        Assert.Equal((true, 300.0), (place.Lanes.Single(l => l.BlankId == "a").Turned!.Value, place.Lanes.Single(l => l.BlankId == "a").FeedMm!.Value));
        Assert.False(place.Lanes.Single(l => l.BlankId == "b").Turned);
    }

    [Fact]
    public void Any_order_is_never_worse_than_the_order_given()
    {
        foreach (LaneCase drawn in Enumerable.Range(201, 60).Select(LaneCase.Draw))
        {
            Reading<BeltPlace> given = LanePlan.Solve("run", drawn.Blanks, anyOrder: false, drawn.Belt), any = LanePlan.Solve("run", drawn.Blanks, anyOrder: true, drawn.Belt);
            Assert.True(any.IsTaken || !given.IsTaken);
            if (given.IsTaken)
                Assert.True(any.Value.UncoveredMm <= given.Value.UncoveredMm + 1e-9);
        }
    }

    private static double Uncovered(BeltPlace place, Belt belt) => belt.Zones.Where(z => place.OpenZones.Contains(z.Id))
        .Sum(z => z.WidthMm - place.Lanes.Sum(l => Math.Max(0, Math.Min(z.EndMm, l.StartMm + l.WidthMm) - Math.Max(z.StartMm, l.StartMm))));

    private static List<BeltZone> Zones(int count, double width) => [.. Enumerable.Range(0, count).Select(i => new BeltZone(Invariant($"Z{i}"), i * width, width))];
}
