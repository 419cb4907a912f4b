using Laydown.Measures;
using Laydown.Plan.Log;
using Xunit;

namespace Laydown.Core.Tests.Log;

public sealed class LogLawTests
{
    [Fact]
    public void A_run_broken_off_and_taken_up_again_counts_its_time_without_the_break_and_its_sheets_together()
    {
        RunActual actual = RunActuals.Of(LogSamples.Run, LogSamples.TwoTurns);
        Assert.Equal(50, actual.Minutes, 9);
        Assert.Equal((11, 1), (actual.Good, actual.Spoiled));
        Assert.Equal((LogSamples.At(0), LogSamples.At(70)), (actual.Started, actual.Ended));

        // Ten sheets were planned at 2 min, after 10 min of set-up; twelve were made.
        Assert.Equal(34, actual.EstimatedMinutes, 9);
        Assert.True(actual.OnTime);
        Assert.Null(actual.InkMl);
    }

    [Fact]
    public void Causes_come_dearest_first_and_add_up_to_all()
    {
        RemakeNote[] remakes = [Remake(RemakeCause.Bands, 1200), Remake(RemakeCause.Dust, 300), Remake(RemakeCause.Bands, 500), Remake(RemakeCause.Code, 2000)];
        IReadOnlyList<CauseShare> shares = CauseShares.Of(remakes);
        Assert.Equal([RemakeCause.Code, RemakeCause.Bands, RemakeCause.Dust], shares.Select(s => s.Cause));
        Assert.Equal(new Money(4000), Money.Sum(shares.Select(s => s.Cost)));
        Assert.Equal([50, 92.5, 100], shares.Select(s => s.UpToPercent));
        Assert.Empty(CauseShares.Of([]));
    }

    [Fact]
    public void The_use_of_the_presses_is_the_product_of_its_parts_and_tells_them()
    {
        RunActual actual = RunActuals.Of(LogSamples.Run, LogSamples.TwoTurns);
        IReadOnlyList<Figure> figures = ShopFigures.Of([actual], [Remake(RemakeCause.Dust, 300)], new(100, 50));
        Assert.Equal(100 * (50 / 100.0) * (34 / 50.0) * (11 / 12.0), Of("use of the presses"), 9);
        Assert.Equal(100 * 11 * 2.0 / (12 * 3), Of("material yield"), 9);
        Assert.Equal(100, Of("runs on time"));
        Assert.Equal(3, Of("cost of remakes"));
        Assert.DoesNotContain(ShopFigures.Of([actual], [], null), f => f.Name == "availability");
        Assert.All(figures, f => Assert.NotEmpty(f.Because));

        double Of(string name) => figures.Single(f => f.Name == name).Value;
    }

    private static RemakeNote Remake(RemakeCause cause, long cents) =>
        new(cause, RemakeFound.Press, null, 2, 1, 10, 5, RemakePayer.Shop, new Money(cents), "");
}
