using Laydown.Core.Tests.Press;
using Laydown.Measures;
using Laydown.Plan.Build;
using Laydown.Plan.Orders;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.Plan;

public sealed class StackJudgeLawTests
{
    private static readonly PressDescription Press = Presses.Hybrid(Presses.Mode()) with { MaxLayers = 9 };

    /// <summary>Every wish: faces, viewers, lamp, pictures, sources of white and block-out, masks positive and negative.</summary>
    private static IEnumerable<BuildWish> Wishes() =>
        from through in new[] { false, true }
        from lit in new[] { false, true }
        from dayNight in new[] { false, true }
        from white in new WhiteSource?[] { null, WhiteSource.Flood, WhiteSource.UnderImage, WhiteSource.MaskPicture }
        from clear in new[] { false, true }
        from printed in Enum.GetValues<PrintedFace>()
        from seen in Enum.GetValues<SeenFrom>()
        from back in Enum.GetValues<BackPicture>()
        from blockOut in new WhiteSource?[] { null, WhiteSource.Flood, WhiteSource.MaskPicture }
        from negative in new[] { false, true }
        from percent in new[] { 100, 160 }
        select new BuildWish(through, lit, dayNight, white, null, percent, 0, clear, printed, seen, back, null, blockOut, null, percent, 0,
            negative && white == WhiteSource.MaskPicture, negative && blockOut == WhiteSource.MaskPicture);

    [Theory]
    [InlineData(SheetLight.Clear, 3900)]
    [InlineData(SheetLight.Opal, 3900)]
    [InlineData(SheetLight.Opaque, 500)]
    public void Every_derived_stack_shows_each_viewer_his_picture_and_passes_without_a_warning(SheetLight light, int atLeast)
    {
        Stock stock = Presses.Board(light: light) with { ReflectancePercent = light == SheetLight.Clear ? 8 : 45 };
        int derived = 0;
        foreach (BuildWish wish in Wishes())
        {
            Reading<LayerStack> stack = StackBuilder.Derive(wish, stock, Press, Presses.Inks());
            if (!stack.IsTaken)
                continue;
            derived++;
            Assert.DoesNotContain(StackJudge.Judge(stack.Value, stock, Press.MaxLayers), f => f.Severity > Severity.Note);
            foreach (Viewer viewer in stack.Value.Viewers)
                SeesItsPicture(stack.Value, wish, viewer);
        }

        Assert.True(derived >= atLeast, Invariant($"{derived} wishes gave a stack"));
    }

    // The first picture that a viewer meets is his own, the right way round for him, and nothing but clear lies before it.
    private static void SeesItsPicture(LayerStack stack, BuildWish wish, Viewer viewer)
    {
        int[] path = StackSight.Path(stack, viewer);
        Layer met = stack.Layers[path.First(i => i >= 0 && stack.Layers[i].Group != InkGroup.Clear)];
        Assert.Equal(InkGroup.Colour, met.Group);
        Assert.Equal(viewer == Viewer.Back && wish.Back == BackPicture.Own ? 2 : 1, met.ArtworkPage);
        Assert.Equal((viewer == Viewer.Front) != (met.Face == SheetFace.First), met.Mirrored);
    }

    [Fact]
    public void A_sheet_for_two_viewers_carries_five_layers_on_one_face_or_shares_them_between_both()
    {
        BuildWish wish = new(false, false, false, WhiteSource.Flood, null, 100, 0, false, SeenFrom: SeenFrom.BothSides, Back: BackPicture.Own, BlockOut: WhiteSource.Flood);
        Stock clear = Presses.Board(light: SheetLight.Clear);
        LayerStack one = StackBuilder.Derive(wish, clear, Press, Presses.Inks()).Value;
        Assert.Equal(
            [(InkGroup.Colour, 2, true), (InkGroup.White, 2, true), (InkGroup.BlockOut, 1, false), (InkGroup.White, 1, false), (InkGroup.Colour, 1, false)],
            one.Layers.Select(l => (l.Group, l.ArtworkPage, l.Mirrored)));
        Assert.All(one.Layers, l => Assert.Equal(SheetFace.First, l.Face));

        LayerStack split = StackBuilder.Derive(wish with { Printed = PrintedFace.Both }, clear, Press, Presses.Inks()).Value;
        Assert.Equal([InkGroup.BlockOut, InkGroup.White, InkGroup.Colour], split.On(SheetFace.First).Select(l => l.Group));
        Assert.Equal([InkGroup.White, InkGroup.Colour], split.On(SheetFace.Second).Select(l => l.Group));
        Assert.All(split.Layers, l => Assert.False(l.Mirrored));

        LayerStack second = StackBuilder.Derive(wish with { Printed = PrintedFace.Second }, clear, Press, Presses.Inks()).Value;
        Assert.Equal([(1, true), (2, false)], second.Layers.Where(l => l.Group == InkGroup.Colour).Select(l => (l.ArtworkPage, l.Mirrored)));
    }

    [Fact]
    public void The_same_picture_lies_before_and_behind_the_white_of_a_lit_print_at_the_strength_asked_for()
    {
        BuildWish wish = new(true, true, false, WhiteSource.Flood, null, 100, 0, false, Back: BackPicture.Same, BackPercent: 80);
        LayerStack stack = StackBuilder.Derive(wish, Presses.Board(light: SheetLight.Clear), Press, Presses.Inks()).Value;
        Assert.Equal([(InkGroup.Colour, 1, 100.0), (InkGroup.White, 1, 100.0), (InkGroup.Colour, 1, 80.0)], stack.Layers.Select(l => (l.Group, l.ArtworkPage, l.StrengthPercent)));
        Assert.All(stack.Layers, l => Assert.True(l.Mirrored));

        // Density 1.2 of the white: S·X = 10^1.2 − 1 = 14.8, and 40 % + 160 % / 14.8 = 51 %.
        LayerStack balanced = StackBuilder.Derive(wish with { BackPercent = null }, Presses.Board(light: SheetLight.Clear), Press, Presses.Inks()).Value;
        Assert.Equal(51, balanced.Layers[^1].StrengthPercent);
    }

    [Fact]
    public void A_mask_comes_from_the_page_after_the_pictures_unless_another_is_named()
    {
        BuildWish wish = new(false, true, true, WhiteSource.MaskPicture, null, 100, 0, false, WhiteNegative: true);
        Stock clear = Presses.Board(light: SheetLight.Clear);
        Layer white = StackBuilder.Derive(wish, clear, Press, Presses.Inks()).Value.Layers[1];
        Assert.Equal((3, true), (white.ArtworkPage, white.Negative));
        Assert.Equal(7, StackBuilder.Derive(wish with { MaskPage = 7 }, clear, Press, Presses.Inks()).Value.Layers[1].ArtworkPage);
        Assert.Equal(2, StackBuilder.Derive(wish with { DayNight = false }, clear, Press, Presses.Inks()).Value.Layers[0].ArtworkPage);
    }

    [Fact]
    public void Faces_apart_are_printed_where_asked_for_with_the_shift_between_them_told()
    {
        BuildWish wish = new(false, true, true, WhiteSource.Flood, null, 100, 0, false, Printed: PrintedFace.Both);
        Stock clear = Presses.Board(thickness: 3, light: SheetLight.Clear);
        LayerStack stack = StackBuilder.Derive(wish, clear, Press, Presses.Inks()).Value;
        Assert.Equal([(SheetFace.First, InkGroup.White, false), (SheetFace.First, InkGroup.Colour, false), (SheetFace.Second, InkGroup.Colour, true)], stack.Layers.Select(l => (l.Face, l.Group, l.Mirrored)));
        Finding advice = Assert.Single(StackJudge.Judge(stack, clear));
        Assert.Equal(("stack-parallax", Severity.Note, "1.1 mm"), (advice.Code, advice.Severity, advice.Measured));
        Assert.Empty(StackJudge.Judge(stack, clear with { ThicknessMm = 0.3 }));
    }

    [Fact]
    public void The_shift_between_faces_follows_the_law_of_refraction()
    {
        // sin 30° / 1.49 = sin 19.61°, tan 19.61° = 0.3562: 3 mm shift by 1.07 mm.
        Assert.Equal(1.0687, Parallax.ShiftMm(3), 0.0005);
        Assert.Equal(0, Parallax.ShiftMm(3, 0));
        Assert.Equal(2 * Parallax.ShiftMm(3), Parallax.ShiftMm(6), 1e-12);
    }

    [Fact]
    public void Layers_written_out_by_hand_are_taken_as_they_stand()
    {
        Layer[] layers = [SmallStacks.Of(InkGroup.Colour, SheetFace.First), SmallStacks.Of(InkGroup.White, SheetFace.First)];
        BuildWish wish = new(false, true, false, null, null, 0, 0, false, Layers: layers);
        LayerStack stack = StackBuilder.Derive(wish, Presses.Board(light: SheetLight.Clear), Press, Presses.Inks()).Value;
        Assert.Equal(layers, stack.Layers);
        Assert.Contains("by hand", Assert.Single(stack.Because), StringComparison.Ordinal);
    }
}

public sealed class StackJudgeRefusalTests
{
    private static readonly Stock Clear = Presses.Board(light: SheetLight.Clear) with { ReflectancePercent = 8 };

    [Fact]
    public void White_nearest_the_viewer_hides_the_picture() =>
        Warned("stack-white-nearest", Clear, On(SheetFace.First, InkGroup.Colour, InkGroup.White), "nearest to the viewer and hides");

    [Fact]
    public void Colour_under_full_white_is_seen_by_no_one() =>
        Warned("stack-unseen", Clear, On(SheetFace.Second, InkGroup.White, InkGroup.Colour), "Layer 2, picture of page 1, is seen by no one");

    [Fact]
    public void With_a_lamp_the_same_order_shows_its_picture_lit_but_not_by_day()
    {
        LayerStack stack = new(On(SheetFace.Second, InkGroup.White, InkGroup.Colour), true, []);
        Assert.Equal(["stack-white-nearest"], StackJudge.Judge(stack, Clear).Select(f => f.Code));
    }

    [Fact]
    public void A_day_picture_behind_the_white_is_never_seen_by_day_and_the_night_picture_before_it_is()
    {
        Layer[] turned = [.. On(SheetFace.First, InkGroup.Colour, InkGroup.White, InkGroup.Colour)];
        turned[2] = turned[2] with { ArtworkPage = 2 };
        Assert.Equal(["stack-day-hidden", "stack-night-by-day"], StackJudge.Judge(new(turned, true, [], DayNight: true), Clear).Select(f => f.Code));
    }

    [Fact]
    public void A_second_surface_that_is_not_mirrored_shows_side_inverted() =>
        Warned("stack-mirrored", Clear, [.. On(SheetFace.Second, InkGroup.Colour, InkGroup.White).Select(l => l with { Mirrored = false })], "through the sheet");

    [Fact]
    public void A_first_surface_that_is_mirrored_shows_side_inverted() =>
        Warned("stack-mirrored", Clear, [.. On(SheetFace.First, InkGroup.White, InkGroup.Colour).Select(l => l with { Mirrored = true })], "printed side");

    [Fact]
    public void Each_of_two_viewers_needs_his_picture_the_right_way_round()
    {
        Layer[] layers = [.. On(SheetFace.First, InkGroup.Colour, InkGroup.White, InkGroup.Colour)];
        Finding wrong = Assert.Single(StackJudge.Judge(new(layers, false, [], SeenFrom.BothSides), Clear));
        Assert.Equal("stack-mirrored", wrong.Code);
        layers[0] = layers[0] with { Mirrored = true };
        Assert.Empty(StackJudge.Judge(new(layers, false, [], SeenFrom.BothSides), Clear));
    }

    [Fact]
    public void Block_out_between_lamp_and_night_picture_keeps_it_dark()
    {
        Layer[] layers = [.. On(SheetFace.First, InkGroup.Colour, InkGroup.BlockOut, InkGroup.White, InkGroup.Colour)];
        layers[0] = layers[0] with { ArtworkPage = 2 };
        IReadOnlyList<Finding> found = StackJudge.Judge(new(layers, true, [], DayNight: true), Clear);
        Assert.Equal(["stack-block-out-lamp", "stack-unseen", "stack-night-dark"], found.Select(f => f.Code));
    }

    [Fact]
    public void Colour_on_clear_without_white_behind_it_is_noted_and_on_opal_it_is_not()
    {
        LayerStack glass = new(On(SheetFace.Second, InkGroup.Colour, InkGroup.Clear), false, []);
        Finding note = Assert.Single(StackJudge.Judge(glass, Clear));
        Assert.Equal(("stack-no-white", Severity.Note), (note.Code, note.Severity));
        LayerStack front = new(On(SheetFace.First, InkGroup.Colour), false, []);
        Assert.Empty(StackJudge.Judge(front, Clear with { Light = SheetLight.Opal, ReflectancePercent = 45 }));
    }

    [Fact]
    public void Colour_straight_on_black_is_seen_by_no_one() =>
        Warned("stack-unseen", Clear, On(SheetFace.First, InkGroup.White, InkGroup.BlockOut, InkGroup.Colour), "seen by no one");

    [Fact]
    public void A_lamp_behind_an_opaque_sheet_and_too_many_layers_stop_the_item()
    {
        LayerStack stack = new(On(SheetFace.First, InkGroup.White, InkGroup.Colour), true, []);
        Assert.Equal([("stack-layers", Severity.Stop), ("stack-lit-opaque", Severity.Stop)], StackJudge.Judge(stack, Presses.Board(), 1).Select(f => (f.Code, f.Severity)));
        Assert.Empty(StackJudge.Judge(stack with { Lit = false }, Presses.Board(), 2));
    }

    [Fact]
    public void White_that_no_one_sees_and_no_lamp_crosses_is_idle() =>
        Warned("stack-idle", Presses.Board(), [.. On(SheetFace.First, InkGroup.Colour), SmallStacks.Of(InkGroup.White, SheetFace.Second)], "does nothing");

    [Fact]
    public void A_viewer_without_any_picture_is_told()
    {
        LayerStack stack = new(On(SheetFace.First, InkGroup.BlockOut, InkGroup.White, InkGroup.Colour), false, [], SeenFrom.BothSides);
        Assert.Contains(StackJudge.Judge(stack, Clear), f => f.What.StartsWith("Block-out lies nearest to the viewer on the back", StringComparison.Ordinal));
    }

    private static void Warned(string code, Stock stock, IReadOnlyList<Layer> layers, string words)
    {
        Finding found = StackJudge.Judge(new(layers, false, []), stock).First(f => f.Code == code);
        Assert.Equal(Severity.Warn, found.Severity);
        Assert.Contains(words, found.What, StringComparison.Ordinal);
        Assert.NotNull(found.Repair);
    }

    private static IReadOnlyList<Layer> On(SheetFace face, params InkGroup[] groups) => [.. groups.Select(g => SmallStacks.Of(g, face))];
}
