using Laydown.Core.Tests.Press;
using Laydown.Measures;
using Laydown.Plan.Build;
using Laydown.Plan.Orders;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.Plan;

public sealed class StackLawTests
{
    private static readonly PressDescription Press = Presses.Hybrid(Presses.Mode());

    /// <summary>Every wish that can be printed, on every sheet that lets it be seen.</summary>
    public static IEnumerable<TheoryDataRow<bool, bool, bool, bool, SheetLight>> Wishes() =>
        from through in new[] { false, true }
        from dayNight in new[] { false, true }
        from white in new[] { false, true }
        from clear in new[] { false, true }
        from light in Enum.GetValues<SheetLight>()
        where light != SheetLight.Opaque || !(through || dayNight)
        select new TheoryDataRow<bool, bool, bool, bool, SheetLight>(through, dayNight, white, clear, light);

    [Theory, MemberData(nameof(Wishes))]
    public void The_viewer_meets_the_day_picture_before_any_white(bool through, bool dayNight, bool white, bool clear, SheetLight light)
    {
        LayerStack stack = Derive(new(through, dayNight, dayNight, white ? WhiteSource.Flood : null, null, 100, 0, clear), light).Value;

        // Walk from the viewer's eye inward: on the first surface the outermost layer is met first, on the second the one on the sheet.
        IEnumerable<Layer> met = through ? stack.Layers : stack.Layers.Reverse();
        List<Layer> inked = [.. met.Where(l => l.Group != InkGroup.Clear)];
        Assert.Equal(InkGroup.Colour, inked[0].Group);
        Assert.Equal(1, inked[0].ArtworkPage);
        if (dayNight)
        {
            Assert.Equal([InkGroup.Colour, InkGroup.White, InkGroup.Colour], inked.Select(l => l.Group));
            Assert.Equal(2, inked[2].ArtworkPage);
        }
    }

    [Theory, MemberData(nameof(Wishes))]
    public void Ink_is_mirrored_exactly_when_it_is_seen_through_the_sheet_and_lies_on_one_face(bool through, bool dayNight, bool white, bool clear, SheetLight light)
    {
        LayerStack stack = Derive(new(through, dayNight, dayNight, white ? WhiteSource.Flood : null, null, 100, 0, clear), light).Value;
        Assert.All(stack.Layers, l => Assert.Equal(through, l.Mirrored));
        Assert.All(stack.Layers, l => Assert.Equal(through ? SheetFace.Second : SheetFace.First, l.Face));
        Assert.Equal(clear, stack.Layers[^1].Group == InkGroup.Clear);
        Assert.NotEmpty(stack.Because);
    }

    [Fact]
    public void Shaped_masks_reach_every_layer_they_are_wished_for_and_are_told()
    {
        MaskShaping white = new(0.8, 0.3, [0, 30, 100], [new(10, 5, 40, 20)]), block = new(-1.5), clear = new(KeepOutsMm: [new(0, 0, 5, 5), new(9, 9, 5, 5)]);
        BuildWish wish = new(false, false, false, WhiteSource.UnderImage, null, 150, 0.3, true, BlockOut: WhiteSource.Alpha,
            WhiteShaping: white, BlockOutShaping: block, ClearShaping: clear);
        LayerStack stack = Derive(wish, SheetLight.Clear).Value;
        Assert.Equal(2, stack.Layers.Count(l => l.Group == InkGroup.White && l.Shaping == white));
        Assert.Equal(block, stack.Layers.Single(l => l.Group == InkGroup.BlockOut).Shaping);
        Assert.Equal(clear, stack.Layers.Single(l => l.Group == InkGroup.Clear).Shaping);
        Assert.True(stack.Layers.Single(l => l.Group == InkGroup.Colour).Shaping.IsNone);
        string told = string.Join(' ', stack.Because);
        Assert.Contains("Mask of the white: no part under 0.3 mm, fades over 0.8 mm inward, strength by a curve of 3 steps, 1 place kept out, as asked for.", told, StringComparison.Ordinal);
        Assert.Contains("Mask of the block-out: fades over 1.5 mm outward, as asked for.", told, StringComparison.Ordinal);
        Assert.Contains("Mask of the clear: 2 places kept out, as asked for.", told, StringComparison.Ordinal);
        Assert.DoesNotContain("Mask of", string.Join(' ', Derive(wish with { WhiteShaping = null, BlockOutShaping = new(), ClearShaping = null }, SheetLight.Clear).Value.Because), StringComparison.Ordinal);
    }

    [Fact]
    public void White_over_100_percent_is_split_into_layers_of_equal_strength()
    {
        LayerStack stack = Derive(new(false, false, false, WhiteSource.UnderImage, null, 150, 0.3, false), SheetLight.Clear).Value;
        Assert.Equal([(InkGroup.White, 75.0), (InkGroup.White, 75.0), (InkGroup.Colour, 100.0)], stack.Layers.Select(l => (l.Group, l.StrengthPercent)));
        Assert.Equal(0.3, stack.Layers[0].ChokeMm);
    }

    [Fact]
    public void A_named_separation_keeps_its_name() => Assert.Equal("White",
        Derive(new(true, false, false, WhiteSource.NamedSeparation, "White", 100, 0, false), SheetLight.Clear).Value.Layers[1].SeparationName);

    private static Reading<LayerStack> Derive(BuildWish wish, SheetLight light) =>
        StackBuilder.Derive(wish, Presses.Board(light: light), Press, Presses.Inks());
}

public sealed class StackRefusalTests
{
    private static readonly PressDescription Hybrid = Presses.Hybrid(Presses.Mode()), Plain = Presses.Plain(Presses.Mode());

    [Theory]
    [InlineData(true, false, false, "/build/seenThroughSheet")]
    [InlineData(false, true, false, "/build/lit")]
    [InlineData(false, true, true, "/build/dayNight")]
    public void What_needs_light_through_the_sheet_is_refused_on_an_opaque_one(bool through, bool lit, bool dayNight, string field)
    {
        InputFault fault = Assert.Single(StackBuilder.Derive(new(through, lit, dayNight, null, null, 0, 0, false), Presses.Board(), Hybrid, Presses.Inks()).Faults);
        Assert.Equal(field, fault.Field);
        Assert.Contains("clear or opal", fault.Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void More_layers_than_the_press_takes_are_refused_with_the_number_that_would_do()
    {
        InputFault fault = StackBuilder.Derive(new(false, true, true, null, null, 100, 0, false), Presses.Board(light: SheetLight.Clear), Hybrid with { MaxLayers = 2 }, Presses.Inks()).Faults[0];
        Assert.Equal("3 layers (colour, white, colour)", fault.Found);
        Assert.Contains("a press that takes 3", fault.Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void White_and_clear_are_refused_where_press_or_inks_lack_them()
    {
        BuildWish wish = new(false, false, false, WhiteSource.Flood, null, 100, 0, true);
        Assert.Equal(["/build", "/build/white", "/build/clear"], StackBuilder.Derive(wish, Presses.Board(), Plain, Presses.Inks()).Faults.Select(f => f.Field));
        IReadOnlyList<InputFault> noInk = StackBuilder.Derive(wish, Presses.Board(), Hybrid, Presses.Inks() with { Inks = [] }).Faults;
        Assert.All(noInk, f => Assert.Contains("ink set", f.Wanted, StringComparison.Ordinal));
        Assert.Equal(2, noInk.Count);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(201)]
    [InlineData(double.NaN)]
    public void A_strength_of_white_outside_its_range_is_refused(double percent) => Assert.Equal("/build/whitePercent", Assert.Single(
        StackBuilder.Derive(new(false, false, false, WhiteSource.Flood, null, percent, 0, false), Presses.Board(), Hybrid, Presses.Inks()).Faults).Field);

    [Fact]
    public void White_from_a_separation_without_name_is_refused() => Assert.Equal("/build/whiteSeparation", Assert.Single(
        StackBuilder.Derive(new(false, false, false, WhiteSource.NamedSeparation, " ", 100, 0, false), Presses.Board(), Hybrid, Presses.Inks()).Faults).Field);

    /// <summary>One line for each wish that cannot be, with the field that is named and a word of what would do.</summary>
    public static IEnumerable<TheoryDataRow<BuildWish, SheetLight, string, string>> Impossible()
    {
        BuildWish plain = new(false, false, false, null, null, 100, 0, false), both = plain with { SeenFrom = SeenFrom.BothSides, Back = BackPicture.Same };
        return
        [
            new(plain with { Printed = PrintedFace.Second }, SheetLight.Opaque, "/build/printed", "clear or opal"),
            new(plain with { Printed = PrintedFace.Both }, SheetLight.Opaque, "/build/printed", "first"),
            new(plain with { Printed = PrintedFace.Both }, SheetLight.Clear, "/build/printed", "white"),
            new(plain with { SeenThroughSheet = true, Printed = PrintedFace.First }, SheetLight.Clear, "/build/printed", "second"),
            new(both with { Printed = PrintedFace.First }, SheetLight.Opaque, "/build/printed", "both"),
            new(both with { Lit = true }, SheetLight.Clear, "/build/lit", "one side"),
            new(both with { DayNight = true, Back = BackPicture.Own }, SheetLight.Clear, "/build/dayNight", "one side"),
            new(both with { Back = BackPicture.None }, SheetLight.Clear, "/build/back", "page 2"),
            new(plain with { Back = BackPicture.Own }, SheetLight.Clear, "/build/back", "bothSides"),
            new(plain with { Back = BackPicture.Same }, SheetLight.Clear, "/build/back", "lit true"),
            new(plain with { DayNight = true, Back = BackPicture.Same }, SheetLight.Clear, "/build/back", "night picture"),
            new(both with { BackPercent = 120 }, SheetLight.Clear, "/build/backPercent", "100 %"),
            new(plain with { Lit = true, BlockOut = WhiteSource.Flood }, SheetLight.Clear, "/build/blockOut", "window"),
            new(plain with { BlockOut = WhiteSource.NamedSeparation }, SheetLight.Clear, "/build/blockOutSeparation", "name"),
            new(plain with { BlockOut = WhiteSource.Flood, BlockOutPercent = 0 }, SheetLight.Clear, "/build/blockOutPercent", "200 %"),
            new(plain with { BlockOut = WhiteSource.Flood, BlockOutNegative = true }, SheetLight.Clear, "/build/blockOutNegative", "mask picture"),
            new(plain with { White = WhiteSource.UnderImage, WhiteNegative = true }, SheetLight.Clear, "/build/whiteNegative", "mask picture"),
            new(both with { WhitePercent = 300 }, SheetLight.Clear, "/build/whitePercent", "200 %"),
            new(plain with { MaskPage = 0 }, SheetLight.Clear, "/build/maskPage", "from 1"),
            new(plain with { Layers = [] }, SheetLight.Clear, "/build/layers", "at least one"),
            new(plain with { Layers = [SmallStacks.Of(InkGroup.Colour, SheetFace.First) with { StrengthPercent = 150 }] }, SheetLight.Clear, "/build/layers/0/strengthPercent", "100 %"),
            new(plain with { Layers = [SmallStacks.Of(InkGroup.Colour, SheetFace.First) with { Source = WhiteSource.Flood }] }, SheetLight.Clear, "/build/layers/0/source", "null"),
            new(plain with { Layers = [SmallStacks.Of(InkGroup.White, SheetFace.First) with { Negative = true }] }, SheetLight.Clear, "/build/layers/0/negative", "false"),
            new(plain with { Layers = [SmallStacks.Of(InkGroup.White, SheetFace.First) with { Source = WhiteSource.NamedSeparation }] }, SheetLight.Clear, "/build/layers/0/separationName", "name"),
            new(plain with { White = WhiteSource.Flood, WhiteShaping = new(0.5) }, SheetLight.Clear, "/build/whiteShaping/featherMm", "a flood has none"),
            new(plain with { White = WhiteSource.Alpha, WhiteShaping = new(double.NaN) }, SheetLight.Clear, "/build/whiteShaping/featherMm", "-10 mm to 10 mm"),
            new(plain with { White = WhiteSource.Alpha, WhiteShaping = new(0, 10.1) }, SheetLight.Clear, "/build/whiteShaping/minFeatureMm", "-10 mm to 10 mm"),
            new(plain with { White = WhiteSource.Alpha, WhiteShaping = new(StrengthCurve: [0, 60, 50, 100]) }, SheetLight.Clear, "/build/whiteShaping/strengthCurve", "never fall"),
            new(plain with { White = WhiteSource.Alpha, WhiteShaping = new(StrengthCurve: [10, 100]) }, SheetLight.Clear, "/build/whiteShaping/strengthCurve", "from 0 to 100"),
            new(plain with { BlockOut = WhiteSource.Alpha, BlockOutShaping = new(KeepOutsMm: [new(0, 0, 5, 5), new(0, 0, 0, 5)]) }, SheetLight.Clear, "/build/blockOutShaping/keepOutsMm/1", "over 0 mm"),
            new(plain with { Clear = true, ClearShaping = new(0, 2) }, SheetLight.Clear, "/build/clearShaping/minFeatureMm", "a flood has none"),
            new(plain with { Layers = [SmallStacks.Of(InkGroup.Colour, SheetFace.First) with { FeatherMm = 1 }] }, SheetLight.Clear, "/build/layers/0/featherMm", "colour has no mask"),
            new(plain with { Layers = [SmallStacks.Of(InkGroup.Colour, SheetFace.First) with { StrengthCurve = [0, 100] }] }, SheetLight.Clear, "/build/layers/0/strengthCurve", "none"),
            new(plain with { Layers = [SmallStacks.Of(InkGroup.Colour, SheetFace.First) with { KeepOutsMm = [new(0, 0, 1, 1)] }] }, SheetLight.Clear, "/build/layers/0/keepOutsMm", "none"),
            new(plain with { Layers = [SmallStacks.Of(InkGroup.White, SheetFace.First) with { Source = WhiteSource.Flood, MinFeatureMm = -11 }] }, SheetLight.Clear, "/build/layers/0/minFeatureMm", "10 mm"),
        ];
    }

    [Theory, MemberData(nameof(Impossible))]
    public void What_cannot_be_is_refused_with_field_and_what_would_do(BuildWish wish, SheetLight light, string field, string wanted)
    {
        InputFault fault = Assert.Single(StackBuilder.Derive(wish, Presses.Board(light: light), Hybrid, Presses.Inks()).Faults);
        Assert.Equal(field, fault.Field);
        Assert.Contains(wanted, fault.Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void Block_out_is_refused_where_press_or_inks_have_no_black()
    {
        BuildWish wish = new(false, false, false, WhiteSource.Flood, null, 100, 0, false, BlockOut: WhiteSource.Flood);
        PressDescription noBlack = Hybrid with { Channels = [.. Hybrid.Channels.Where(c => c.Role != Laydown.Press.Inks.InkRole.Black)] };
        Assert.Equal("/build/blockOut", Assert.Single(StackBuilder.Derive(wish, Presses.Board(light: SheetLight.Clear), noBlack, Presses.Inks()).Faults).Field);
    }
}
