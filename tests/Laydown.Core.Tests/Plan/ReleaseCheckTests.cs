using Laydown.Core.Tests.Press;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.HoldDown;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.Plan;

public sealed class ReleaseCheckLawTests
{
    internal static readonly MeasuredSheet Sound = new([3.02, 3.05, 3.00, 2.98, 3.04], 0.2, "Ada", "Bo", 3.06, true);

    [Fact]
    public void The_head_height_follows_the_thickest_that_either_of_two_people_found()
    {
        (Run run, PressDescription press, Stock stock) = Planned();
        RunRelease release = ReleaseCheck.Of(run, press, stock, Sound).Value;
        Assert.Equal(3.06, release.ThickestMm);
        Assert.True(release.HeadGap.Mm >= release.HighestPointMm + SheetHeights.ClearanceMm);

        RunRelease thicker = ReleaseCheck.Of(run, press, stock, Sound with { ThicknessMm = [3.02, 3.28, 3.0, 2.98, 3.04], CheckedHighestMm = 3.28 }).Value;
        Assert.Equal(0.22, thicker.HighestPointMm - release.HighestPointMm, 9);
    }

    [Fact]
    public void A_higher_edge_sets_the_heads_higher_and_a_flat_one_never_lower_than_planned()
    {
        (Run run, PressDescription press, Stock stock) = Planned();
        double planned = run.SetUp.HighestPointMm - stock.ThicknessMm - stock.ThicknessToleranceMm;
        Assert.Equal(planned, ReleaseCheck.Of(run, press, stock, Sound with { EdgeLiftMm = 0 }).Value.HighestPointMm - 3.06, 9);
        Assert.Equal(1.0 + run.SetUp.InkMm, ReleaseCheck.Of(run, press, stock, Sound with { EdgeLiftMm = 1.0 }).Value.HighestPointMm - 3.06, 9);
    }

    [Fact]
    public void Every_reading_in_the_tolerance_clears_the_heads_by_at_least_the_clearance()
    {
        (Run run, PressDescription press, Stock stock) = Planned();
        for (double mm = 2.7; mm <= 3.3; mm += 0.01)
        {
            RunRelease release = ReleaseCheck.Of(run, press, stock, Sound with { ThicknessMm = [mm, mm, mm, mm, mm], CheckedHighestMm = mm }).Value;
            Assert.InRange(release.HeadGap.Mm - mm - run.SetUp.InkMm, SheetHeights.ClearanceMm, SheetHeights.ClearanceMm + 2);
        }
    }

    internal static (Run Run, PressDescription Press, Stock Stock) Planned(double bow = 5)
    {
        PressDescription press = Presses.Hybrid(Presses.Mode("a"));
        Stock stock = Presses.Board(bow: bow);
        return (RunPlanner.Plan(Works.Request(press, stock)).Value, press, stock);
    }
}

public sealed class ReleaseCheckRefusalTests
{
    [Fact]
    public void Each_reading_that_cannot_be_is_named()
    {
        Assert.Equal(["thicknessMm"], Fields(ReleaseCheckLawTests.Sound with { ThicknessMm = [3, 3, 3, 3] }));
        Assert.Equal(["thicknessMm"], Fields(ReleaseCheckLawTests.Sound with { ThicknessMm = [3, 3, double.NaN, 3, 3] }));
        Assert.Equal(["thicknessMm"], Fields(ReleaseCheckLawTests.Sound with { ThicknessMm = [3, 3, -1, 3, 3] }));
        Assert.Equal(["edgeLiftMm"], Fields(ReleaseCheckLawTests.Sound with { EdgeLiftMm = -0.1 }));
        Assert.Equal(["edgeLiftMm"], Fields(ReleaseCheckLawTests.Sound with { EdgeLiftMm = 1.1 }));
    }

    [Fact]
    public void One_person_alone_releases_nothing()
    {
        Assert.Equal(["checkedBy"], Fields(ReleaseCheckLawTests.Sound with { CheckedBy = " ada " }));
        Assert.Equal(["measuredBy"], Fields(ReleaseCheckLawTests.Sound with { MeasuredBy = " " }));
        Assert.Equal(["checkedBy"], Fields(ReleaseCheckLawTests.Sound with { CheckedBy = "" }));
    }

    [Fact]
    public void A_sheet_outside_its_tolerance_or_two_people_who_differ_stop_the_run()
    {
        Assert.Equal(["thicknessMm"], Fields(ReleaseCheckLawTests.Sound with { ThicknessMm = [3, 3.31, 3, 3, 3], CheckedHighestMm = 3.31 }));
        Assert.Equal(["thicknessMm"], Fields(ReleaseCheckLawTests.Sound with { ThicknessMm = [3, 3.05, 2.69, 3, 3] }));
        Assert.Equal(["checkedHighestMm"], Fields(ReleaseCheckLawTests.Sound with { CheckedHighestMm = 3.2 }));
    }

    [Fact]
    public void What_must_be_seen_and_what_the_set_up_refuses_hold_the_run()
    {
        (Run run, PressDescription press, Stock stock) = ReleaseCheckLawTests.Planned();
        Assert.NotEmpty(run.SetUp.ToBeSeen);
        InputFault unseen = Assert.Single(ReleaseCheck.Of(run, press, stock, ReleaseCheckLawTests.Sound with { Seen = false }).Faults);
        Assert.Equal("seen", unseen.Field);
        Run refused = run with { SetUp = run.SetUp with { Refusals = ["Too little stock."] } };
        Assert.Contains("Too little stock", Assert.Single(ReleaseCheck.Of(refused, press, stock, ReleaseCheckLawTests.Sound).Faults).ToString(), StringComparison.Ordinal);
    }

    private static IEnumerable<string> Fields(MeasuredSheet measured)
    {
        (Run run, PressDescription press, Stock stock) = ReleaseCheckLawTests.Planned();
        return ReleaseCheck.Of(run, press, stock, measured).Match(_ => [], f => f.Select(x => x.Field).Distinct());
    }
}
