using Laydown.Core.Tests.Press;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Xunit;

namespace Laydown.Core.Tests.Plan;

public sealed class ModeLawTests
{
    private static readonly Mode Draft = Presses.Mode("draft", dpi: 360, passes: 1, feedRows: 719, speed: 0.9, quality: PrintQuality.Draft);
    private static readonly Mode Normal = Presses.Mode("normal", dpi: 540, passes: 2, feedRows: 359, speed: 0.9);
    private static readonly Mode High = Presses.Mode("high", dpi: 720, passes: 4, feedRows: 179, speed: 0.9, quality: PrintQuality.High);
    private static readonly PressDescription Press = Presses.Hybrid(Draft, Normal, High);

    [Theory]
    [InlineData(10, "draft")]
    [InlineData(3, "draft")]
    [InlineData(2.9, "normal")]
    [InlineData(1, "normal")]
    [InlineData(0.5, "high")]
    public void The_nearer_the_viewer_the_finer_the_mode(double distanceM, string mode) => Assert.Equal(mode, Choose(new(distanceM, null, null, Works.Stack(), new(1220, 2440))).ModeId);

    [Fact]
    public void The_fastest_of_the_modes_that_do_is_taken_and_every_other_has_its_reason()
    {
        ModeChoice choice = Choose(new(10, null, null, Works.Stack(), new(1220, 2440)));
        Assert.Equal(["normal", "high"], choice.Rejected.Select(r => r.ModeId));
        Assert.All(choice.Rejected, r => Assert.Contains("s are enough", r.Reason, StringComparison.Ordinal));
        Assert.NotEmpty(choice.Reasons);
    }

    [Fact]
    public void Small_text_needs_three_dots_to_a_stem()
    {
        // 5 pt has a stem of 0.176 mm: 2.5 dots of 360 dpi, 3.75 of 540.
        ModeChoice choice = Choose(new(10, 5, null, Works.Stack(), new(1220, 2440)));
        Assert.Equal("normal", choice.ModeId);
        Assert.Contains("2.5 dots", choice.Rejected.Single(r => r.ModeId == "draft").Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_narrow_code_needs_four_dots_to_a_module()
    {
        Assert.Equal("draft", Choose(new(10, null, 0.33, Works.Stack(), new(1220, 2440))).ModeId);
        Assert.Equal("normal", Choose(new(10, null, 0.264, Works.Stack(), new(1220, 2440))).ModeId);
    }

    [Theory]
    [InlineData(10, "normal")]
    [InlineData(2, "high")]
    [InlineData(0.5, "high")]
    public void Lit_from_behind_one_grade_finer_is_taken(double distanceM, string mode) =>
        Assert.Equal(mode, Choose(new(distanceM, null, null, Works.Stack(lit: true), new(1220, 2440))).ModeId);

    [Fact]
    public void Where_nothing_is_fine_enough_the_finest_is_taken_and_a_proof_is_asked_for()
    {
        ModeChoice choice = Choose(new(0.3, 1.5, null, Works.Stack(), new(1220, 2440)));
        Assert.Equal("high", choice.ModeId);
        Assert.Contains("proof", choice.Reasons[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_mode_whose_bands_are_not_borne_gives_way_to_the_next_and_both_say_so()
    {
        ModeChoice choice = Choose(Far, "draft", 0.5, "normal", 0.1, "high", 0.02);
        Assert.Equal("normal", choice.ModeId);
        Assert.Contains("at most 0.10 L* is seen of them from 10 m, mostly by a cause", choice.Reasons[^1], StringComparison.Ordinal);
        Assert.Contains("Bands of 0.50 L* would be seen from 10 m, mostly by a cause; 0.2 L* is borne", choice.Rejected.Single(r => r.ModeId == "draft").Reason, StringComparison.Ordinal);
        Assert.StartsWith("It would do, with bands of 0.02 L*, but takes", choice.Rejected.Single(r => r.ModeId == "high").Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_mode_has_bands_that_are_borne_the_faintest_are_taken_and_a_proof_is_asked_for()
    {
        ModeChoice choice = Choose(Far, "draft", 0.5, "normal", 0.3, "high", 0.4);
        Assert.Equal("normal", choice.ModeId);
        Assert.Contains("faintest bands", choice.Reasons[0], StringComparison.Ordinal);
        Assert.Contains("proof", choice.Reasons[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Bands_nobody_figured_do_not_count_and_modes_that_are_out_are_not_asked()
    {
        List<string> asked = [];
        BandScore? Ask(PressDescription press, Mode mode, ModeDemand demand)
        {
            asked.Add(mode.Id);
            return null;
        }

        ModeDemand near = new(2, null, null, Works.Stack(), new(1220, 2440));
        ModeChoice choice = ModeChooser.Choose(Press, Presses.Condition(modes: ["draft", "normal"]), Presses.Inks(), near, Ask).Value;
        Assert.Equal(Choose(near).ModeId, choice.ModeId);
        Assert.Equal(["normal"], asked);
    }

    private static ModeDemand Far => new(10, null, null, Works.Stack(), new(1220, 2440));

    private static ModeChoice Choose(ModeDemand demand, string one, double first, string two, double second, string three, double third)
    {
        Dictionary<string, double> seen = new() { [one] = first, [two] = second, [three] = third };
        return ModeChooser.Choose(Press, Presses.Condition(modes: ["draft", "normal", "high"]), Presses.Inks(), demand,
            (_, mode, _) => new(seen[mode.Id], 0.2, "a cause")).Value;
    }

    private static ModeChoice Choose(ModeDemand demand) => ModeChooser.Choose(Press, Presses.Condition(modes: ["draft", "normal", "high"]), Presses.Inks(), demand).Value;
}

public sealed class ModeRefusalTests
{
    [Fact]
    public void Modes_that_skip_rows_under_cure_or_are_not_calibrated_are_refused_one_by_one()
    {
        PressDescription press = Presses.Hybrid(Presses.Mode("skips", feedRows: 178), Presses.Mode("cold", lamp: 1), Presses.Mode("other"));
        Reading<ModeChoice> none = ModeChooser.Choose(press, Presses.Condition(modes: ["skips", "cold"]), Presses.Inks(), new(2, null, null, Works.Stack(), new(1220, 2440)));

        Assert.Equal(3, none.Faults.Count);
        Assert.Contains("missed", none.Faults[0].Found, StringComparison.Ordinal);
        Assert.Contains("mJ/cm²", none.Faults[1].Found, StringComparison.Ordinal);
        Assert.Contains("not calibrated", none.Faults[2].Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_press_without_modes_is_refused() =>
        Assert.Equal("modes", Assert.Single(ModeChooser.Choose(Presses.Hybrid(), Presses.Condition(), Presses.Inks(), new(2, null, null, Works.Stack(), new(1, 1))).Faults).Field);

    [Fact]
    public void A_stack_with_more_layers_than_nozzle_blocks_is_refused()
    {
        Mode thin = Presses.Mode("thin", passes: 8, feedRows: 3, speed: 0.5);
        LayerStack four = Works.Stack(false, InkGroup.Colour, InkGroup.White, InkGroup.Colour, InkGroup.Clear);
        Assert.Contains("nozzles for 4 layers", Assert.Single(ModeChooser.Choose(Presses.Hybrid(thin), Presses.Condition(modes: ["thin"]), Presses.Inks(), new(2, null, null, four, new(100, 100))).Faults).Found, StringComparison.Ordinal);
    }
}
