using System.Xml.Linq;
using Laydown.Core.Tests.Press;
using Laydown.Plan.Build;
using Laydown.Plan.Drawings;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Core.Tests.Drawings;

/// <summary>The section of a stack: who stands where, what is seen, what the light does.</summary>
public sealed class SectionLawTests
{
    /// <summary>Mean width of a letter of the drawings' type, of its size: 0.50 to 0.53 measured on lines of the drawings.</summary>
    private const double LetterWidth = 0.55;

    private static readonly Stock Clear = Presses.Board(light: SheetLight.Clear) with { Name = "Clear acrylic 3 mm", ReflectancePercent = 8 };
    private static readonly BuildWish Plain = new(false, false, false, WhiteSource.Flood, null, 100, 0, false);
    private static readonly BuildWish Night = Plain with { Lit = true, DayNight = true };
    private static readonly BuildWish Two = Plain with { SeenFrom = SeenFrom.BothSides, Back = BackPicture.Own, BlockOut = WhiteSource.Flood };

    public static IEnumerable<TheoryDataRow<BuildWish, SheetLight>> Wishes() =>
    [
        .. from light in Enum.GetValues<SheetLight>()
           from wish in new[]
           {
               Plain, Plain with { White = null }, Plain with { SeenThroughSheet = true, Clear = true }, Night, Night with { SeenThroughSheet = true }, Night with { Printed = PrintedFace.Both }, Two,
               Two with { Printed = PrintedFace.Both }, Plain with { Lit = true, White = WhiteSource.MaskPicture, WhiteNegative = true, WhiteChokeMm = -0.25 },
               Plain with { Lit = true, BlockOut = WhiteSource.NamedSeparation, BlockOutSeparation = "A separation with a name as long as names of separations get" },
               Plain with { Lit = true, Back = BackPicture.Same, WhitePercent = 160, White = WhiteSource.Inverse },
           }
           where StackBuilder.Derive(wish, Clear with { Light = light }, Press, Presses.Inks()).IsTaken
           select new TheoryDataRow<BuildWish, SheetLight>(wish, light),
    ];

    private static Laydown.Press.Machines.PressDescription Press { get; } = Presses.Hybrid(Presses.Mode()) with { MaxLayers = 9 };

    [Theory, MemberData(nameof(Wishes))]
    public void Every_section_is_sound_and_no_words_run_out_of_their_panel(BuildWish wish, SheetLight light)
    {
        (LayerStack stack, Stock stock) = Derived(wish, light);
        foreach (string svg in new[] { CrossSection.Draw(stack, stock), CrossSection.Draw(stack, stock, false), CrossSection.Draw(stack, stock, true) })
        {
            Drawn drawn = new(svg);
            drawn.IsSound();
            foreach (XElement text in drawn.Root.Elements().Where(e => e.Name.LocalName == "text" && e.Attribute("transform") is null && e.Attribute("text-anchor")!.Value == "start"))
            {
                double x = Drawn.Number(text.Attribute("x")!.Value), panel = x < 360 ? 360 : drawn.Width;
                Assert.True(x + (LetterWidth * Drawn.Number(text.Attribute("font-size")!.Value) * text.Value.Length) <= panel, text.Value);
            }
        }
    }

    [Fact]
    public void A_lamp_gives_two_panels_beside_each_other_whose_bands_lie_level()
    {
        (LayerStack stack, Stock stock) = Derived(Night, SheetLight.Clear);
        Drawn both = new(CrossSection.Draw(stack, stock));
        Assert.Equal(740, both.Width);
        Assert.Equal(360, new Drawn(CrossSection.Draw(stack, stock, true)).Width);
        Assert.True(both.Says("By day, lamp off") && both.Says("Lamp on, room dim"));
        (double X, double Y, string)[] white = [.. both.Texts.Where(t => t.Text == "White")];
        Assert.Equal(2, white.Length);
        Assert.Equal((380, white[0].Y), (white[1].X - white[0].X, white[1].Y));
        Assert.Equal(360, new Drawn(CrossSection.Draw(stack with { Lit = false }, stock)).Width);
    }

    [Fact]
    public void By_day_the_night_picture_is_hidden_and_lit_both_are_seen()
    {
        (LayerStack stack, Stock stock) = Derived(Night, SheetLight.Clear);
        Drawn day = new(CrossSection.Draw(stack, stock, false)), lamp = new(CrossSection.Draw(stack, stock, true));
        Assert.True(day.Says("You see the picture of page 1.") && day.Says("hidden: not seen by day") && day.Says("returns the room's light") && day.Says("lamp off"));
        Assert.True(lamp.Says("You see the pictures of pages 1 and 2") && lamp.Says("spreads the lamp's light") && lamp.Says("lamp on"));
        Assert.False(lamp.Says("hidden"));
        Assert.Contains("You see the picture of page 1.", day.Root.Elements().ElementAt(1).Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_viewers_stand_on_two_sides_and_each_has_a_light_that_comes_back()
    {
        (LayerStack stack, Stock stock) = Derived(Two, SheetLight.Clear);
        Drawn drawn = new(CrossSection.Draw(stack, stock));
        double Of(string words) => drawn.Texts.Single(t => t.Text == words).Y;
        Assert.True(Of("you stand here, in front") < Of("Block-out") && Of("Block-out") < Of("and you here, at the back"));
        Assert.Equal(2, drawn.Texts.Count(t => t.Text == "room light"));
        Assert.True(drawn.Says("In front you see the picture of page 1.") && drawn.Says("At the back you see the picture of page 2.") && drawn.Says("lets no light through"));
        Assert.Equal(["seen in front", "seen at the back"], drawn.Texts.Where(t => t.Text.StartsWith("seen", StringComparison.Ordinal)).OrderBy(t => t.Y).Select(t => t.Text));
    }

    [Fact]
    public void Faces_are_named_and_only_what_is_mirrored_says_so()
    {
        (LayerStack stack, Stock stock) = Derived(Night with { Printed = PrintedFace.Both }, SheetLight.Clear);
        Drawn drawn = new(CrossSection.Draw(stack, stock, false));
        Assert.Equal(["first surface", "sheet", "second surface"], drawn.Texts.Where(t => t.Text is "sheet" || t.Text.EndsWith("surface", StringComparison.Ordinal)).OrderBy(t => t.Y).Select(t => t.Text));
        Assert.Equal(["right-reading", "mirrored"], drawn.Texts.Where(t => t.Text is "right-reading" or "mirrored").OrderBy(t => t.Y).Select(t => t.Text));
        Assert.True(drawn.Says("Not to scale"));
    }

    /// <summary>Lamp light is the only thing drawn in the accent besides eye and lamp: what black keeps back never comes to the viewer's side.</summary>
    [Fact]
    public void Lamp_light_ends_at_block_out_and_goes_on_through_its_window()
    {
        (LayerStack stack, Stock stock) = Derived(Plain with { Lit = true, BlockOut = WhiteSource.MaskPicture, BlockOutNegative = true }, SheetLight.Clear);
        Drawn drawn = new(CrossSection.Draw(stack, stock, true));
        double black = drawn.Texts.Single(t => t.Text == "Block-out").Y, eye = drawn.Texts.Single(t => t.Text == "you stand here").Y;
        List<(double X1, double Y1, double X2, double Y2)> rays = Rays(drawn);
        Assert.Contains(rays, r => r.Y1 > black && r.Y2 > black && r.Y2 < r.Y1);
        Assert.Contains(rays, r => r.Y2 < eye + 40);
        LayerStack shut = stack with { Layers = [stack.Layers[0] with { Source = WhiteSource.Flood, Negative = false }, .. stack.Layers.Skip(1)] };
        Assert.All(Rays(new(CrossSection.Draw(shut, stock, true))), r => Assert.True(r.Y2 > black));
    }

    private static List<(double X1, double Y1, double X2, double Y2)> Rays(Drawn drawn) =>
    [
        .. drawn.Root.Elements().Where(e => e.Attribute("class")?.Value == "ld-accent").Select(e => e.Attribute("d")!.Value).Where(d => d.Contains('L', StringComparison.Ordinal) && !d.Contains('a', StringComparison.Ordinal))
            .Select(d => d[1..].Split('L', ' ')).Select(n => (Drawn.Number(n[0]), Drawn.Number(n[1]), Drawn.Number(n[2]), Drawn.Number(n[3]))),
    ];

    private static (LayerStack Stack, Stock Stock) Derived(BuildWish wish, SheetLight light)
    {
        Stock stock = Clear with { Light = light };
        return (StackBuilder.Derive(wish, stock, Press, Presses.Inks()).Value, stock);
    }
}
