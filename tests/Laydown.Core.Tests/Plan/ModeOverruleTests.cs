using Laydown.Core.Tests.Press;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Heat;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.Plan;

public sealed class ModeOverruleLawTests
{
    internal static readonly PressDescription Press = Presses.Hybrid(
        Presses.Mode("quick", passes: 2, feedRows: 359), Presses.Mode("slow", passes: 4, quality: PrintQuality.High), Presses.Mode("hot", passes: 8, feedRows: 89, lamp: 100));

    [Fact]
    public void The_mode_taken_is_the_next_one_once_that_one_is_taken_away()
    {
        ModeChoice all = Choose(null).Value;
        PressDescription without = Press with { Modes = [.. Press.Modes.Where(m => m.Id != all.ModeId)] };
        Assert.Equal(ModeChooser.Choose(without, Condition, Presses.Inks(), Demand(Presses.Board())).Value.ModeId, all.RunnerUpId);
    }

    [Fact]
    public void Who_took_another_mode_and_why_is_said_first_and_the_one_proposed_is_kept()
    {
        ModeChoice choice = Choose(new("slow", "Ada", "customer wants it as last year.")).Value;
        Assert.Equal(("slow", "quick", "Ada"), (choice.ModeId, choice.ProposedId, choice.Overrule?.By));
        Assert.Equal("Taken by Ada in place of Mode quick: customer wants it as last year.", choice.Reasons[0]);
        Assert.DoesNotContain(choice.Rejected, r => r.ModeId == "slow");
    }

    [Fact]
    public void Taking_the_mode_that_is_proposed_anyway_is_no_overrule()
    {
        ModeChoice choice = Choose(new("quick", "Ada", "because")).Value;
        Assert.Null(choice.Overrule);
        Assert.Equal(Choose(null).Value.Reasons, choice.Reasons);
    }

    [Fact]
    public void Every_mode_is_judged_by_all_that_counts_and_none_says_two_things_of_one()
    {
        ModeChoice choice = Choose(null, Demand(Presses.Board()) with { SmallestTextPt = 12, SmallestModuleMm = 0.5 }).Value;
        foreach (ModeScore score in choice.Scores)
            Assert.Equal(["print condition", "rows and layers", "cure", "heat", "ink load", "grade", "detail", "fine text", "codes", "skin tones"], score.Points.Select(p => p.About));
    }

    [Fact]
    public void A_stock_that_bears_less_ink_than_a_mode_lays_makes_it_less_than_wished_and_still_able()
    {
        // 720 × 720 dots of 14 pl are 11.25 ml/m²; two full layers of them 22.5.
        ModeChoice free = Choose(null).Value, tight = Choose(null, null, Presses.Board() with { MaxInkMlPerM2 = 22.4 }).Value, wide = Choose(null, null, Presses.Board() with { MaxInkMlPerM2 = 22.6 }).Value;
        Assert.All(tight.Scores, s => Assert.Equal(ModeStanding.Coarse, s.Points.Single(p => p.About == "ink load").Standing));
        Assert.Contains("bears 22.4", tight.Reasons[0], StringComparison.Ordinal);
        Assert.All(free.Scores.Concat(wide.Scores), s => Assert.Equal(ModeStanding.Borne, s.Points.Single(p => p.About == "ink load").Standing));
    }

    [Fact]
    public void Light_tones_look_grainy_only_where_their_dots_stand_far_apart_to_the_eye()
    {
        // A tenth of tone in one drop size: 720 dpi / √10 = 0.1116 mm apart, 2 minutes of arc at 0.192 m.
        Assert.Equal(ModeStanding.Coarse, Tones(0.19, 1));
        Assert.Equal(ModeStanding.Borne, Tones(0.195, 1));

        // Light ink of a third of the strength lays three times the dots: √3 times nearer before they are seen.
        Assert.Equal(ModeStanding.Borne, Tones(0.19 / Math.Sqrt(3) * 1.02, 1 / 3.0));
    }

    [Fact]
    public void A_date_too_near_turns_no_mode_away_and_is_said()
    {
        ModeChoice late = Choose(null, Demand(Presses.Board()) with { Sheets = 100, MinutesLeft = 30 }).Value;
        Assert.Equal(Choose(null).Value.ModeId, late.ModeId);
        Assert.Contains(late.Reasons, r => r.StartsWith("Late: ", StringComparison.Ordinal));
        Assert.DoesNotContain(Choose(null, Demand(Presses.Board()) with { Sheets = 100, MinutesLeft = 1e6 }).Value.Reasons, r => r.StartsWith("Late: ", StringComparison.Ordinal));
    }

    private static ModeStanding Tones(double distanceM, double strength)
    {
        Laydown.Press.Inks.InkSet inks = Presses.Inks() with { Inks = [.. Presses.Inks().Inks.Select(i => i with { Strength = strength })] };
        PressDescription press = Press with { Modes = [.. Press.Modes.Select(m => m with { DropsPl = [14] })] };
        return ModeChooser.Choose(press, Condition, inks, Demand(Presses.Board()) with { ViewingDistanceM = distanceM }).Value.Scores[0].Points.Single(p => p.About == "skin tones").Standing;
    }

    internal static readonly Laydown.Press.Conditions.PrintCondition Condition = Presses.Condition(modes: ["quick", "slow", "hot"]);

    internal static Reading<ModeChoice> Choose(ModeOverrule? overrule, ModeDemand? demand = null, Stock? stock = null) =>
        ModeChooser.Choose(Press, Condition, Presses.Inks(), demand ?? Demand(stock ?? Presses.Board()), null, overrule);

    internal static ModeDemand Demand(Stock stock) => new(2, null, null, Works.Stack(), new(1220, 2440)) { Stock = stock, MaxInk = 2 };
}

public sealed class ModeOverruleRefusalTests
{
    [Fact]
    public void A_mode_too_hot_for_the_sheet_is_not_picked_and_cannot_be_taken()
    {
        Stock film = Presses.Board(thickness: 0.3) with { WeightGPerM2 = 400, MaxTemperatureC = 1000 };
        double limit = Math.Round((Warmest(film, "quick") + Warmest(film, "hot")) / 2);
        film = film with { MaxTemperatureC = limit };
        ModeScore hot = ModeOverruleLawTests.Choose(null, null, film).Value.Scores.Single(s => s.ModeId == "hot");
        Assert.Contains(hot.Points, p => p is { About: "heat", Standing: ModeStanding.Out });

        InputFault refused = Assert.Single(ModeOverruleLawTests.Choose(new("hot", "Ada", "because"), null, film).Faults);
        Assert.Contains(Invariant($"it bears {limit} °C"), refused.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_mode_the_press_does_not_have_cannot_be_taken() =>
        Assert.Equal(("mode none", "no such mode"), Told(ModeOverruleLawTests.Choose(new("none", "Ada", "because")).Faults[0]));

    private static double Warmest(Stock film, string modeId)
    {
        PressDescription press = ModeOverruleLawTests.Press;
        Mode mode = press.FindMode(modeId)!;
        return SheetWarmths.RoomC + SheetWarmths.Of(press, mode, film, 1, InkVolume.FullMlPerM2(mode) * 2, 1220).RiseK;
    }

    private static (string Field, string Found) Told(InputFault fault) => (fault.Field, fault.Found);
}
