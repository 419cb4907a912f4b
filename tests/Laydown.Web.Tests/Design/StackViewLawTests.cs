using AngleSharp.Dom;
using Bunit;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Web.Layers;

namespace Laydown.Web.Tests.Design;

/// <summary>The stack on the page: drawing, reasons, warnings and the layers as a table.</summary>
public sealed class StackViewLawTests : BunitContext
{
    private static readonly Stock Acrylic = new(
        "acrylic", "Clear acrylic", true, StockKind.Board, "acrylic, cast", 2050, 1520, 3, 0.7, 5, 3570, 3.2, 70, 80, GrainDirection.None, SheetLight.Clear, 8, 92, new(8000), 10);

    private static readonly LayerStack Night = new(
        [Of(InkGroup.Colour, 2), Of(InkGroup.White, 1), Of(InkGroup.Colour, 1)], true, ["The lamp side is printed first."], DayNight: true);

    [Fact]
    public void A_lit_stack_shows_both_lights_as_named_pictures_that_the_keyboard_reaches()
    {
        var view = View(Night);
        Assert.Equal(["Layers on Clear acrylic, by day", "Layers on Clear acrylic, with the lamp on"], view.FindAll("svg[role=img] > title").Select(t => t.TextContent));
        Assert.All(view.FindAll("svg > desc"), d => Assert.Contains("You see the picture", d.TextContent, StringComparison.Ordinal));
        Assert.Equal(["Section by day", "Section with the lamp on"], view.FindAll("[role=group][tabindex='0']").Select(g => g.GetAttribute("aria-label")));
        Assert.Empty(view.FindAll("style"));
        Assert.Equal("The lamp side is printed first.", Assert.Single(view.FindAll("li")).TextContent);
        Assert.Empty(view.FindAll("[role=note]"));
    }

    [Fact]
    public void Without_a_lamp_one_picture_is_enough() =>
        Assert.Single(View(new([Of(InkGroup.White, 1), Of(InkGroup.Colour, 1)], false, [])).FindAll("svg[role=img]"));

    [Fact]
    public void An_order_that_cannot_work_is_warned_of_in_words_with_what_would_do()
    {
        var view = View(Night with { Layers = [.. Night.Layers.Reverse()] });
        IElement notice = Assert.Single(view.FindAll("[role=note]"));
        Assert.Contains("does not work", notice.TextContent, StringComparison.Ordinal);
        Assert.Contains("The day picture lies behind the white and is never seen by day.", notice.TextContent, StringComparison.Ordinal);
        Assert.Contains("wanted: day picture, white, night picture", notice.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_made_stops_and_advice_does_not()
    {
        var stopped = View(Night, Acrylic with { Light = SheetLight.Opaque });
        Assert.Contains("cannot be made", stopped.FindAll("[role=note]")[0].TextContent, StringComparison.Ordinal);
        var glass = View(new([Of(InkGroup.Colour, 1)], false, []));
        Assert.Empty(glass.FindAll("[role=note]"));
        Assert.Contains("Worth knowing", glass.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_done_to_a_mask_is_told_in_the_table_and_in_the_section()
    {
        Layer white = (Of(InkGroup.White, 1) with { Source = WhiteSource.UnderImage, ChokeMm = 0.2 })
            .With(new(0.5, 0.3, [0, 80, 100], [new(10, 10, 20, 20)]));
        var view = View(new([white, Of(InkGroup.Colour, 1)], false, []));
        Assert.Contains("choked 0.2 mm, no part under 0.3 mm, fades over 0.5 mm inward, strength by a curve of 3 steps, 1 place kept out",
            view.Find("tbody").TextContent, StringComparison.Ordinal);
        Assert.Contains("fades over 0.5 mm inward", view.Find("svg > desc").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_names_the_faces_for_one_viewer_and_for_two()
    {
        LayerStack both = new([Of(InkGroup.Colour, 1), Of(InkGroup.Colour, 1) with { Face = SheetFace.Second }], false, [], SeenFrom.BothSides);
        Assert.Equal(
            ["First surface, toward the viewer in front", "Second surface, toward the viewer on the back"],
            View(both).FindAll("tbody tr").Select(r => r.Children[2].TextContent));
        Assert.All(View(Night).FindAll("tbody tr"), r => Assert.Equal("First surface, toward the viewer", r.Children[2].TextContent));
    }

    private static Layer Of(InkGroup group, int page) => new(SheetFace.First, group, group == InkGroup.Colour ? null : WhiteSource.Flood, null, page, 100, 0, false);

    private IRenderedComponent<StackView> View(LayerStack stack, Stock? stock = null) =>
        Render<StackView>(p => p.Add(c => c.Stack, stack).Add(c => c.Stock, stock ?? Acrylic));
}
