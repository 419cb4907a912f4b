using Laydown.Core.Tests.Press;
using Laydown.Optics.Looks;
using Laydown.Plan.Build;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Viewer = Laydown.Press.Stacks.Viewer;
using Xunit;

namespace Laydown.Core.Tests.Plan;

/// <summary>The walk from the eye inward knows no optics; here optics says of every small stack whether it is right.</summary>
public sealed class StackSightLawTests
{
    /// <summary>
    /// ΔE00 between unseen and seen. Of all stacks, a picture or block-out called unseen changes the look by 1.57 at most and one called seen by 2.73
    /// at least (the last of five colours, behind opal); white by 2.61 at most (on opal with white behind) and 4.5 at least.
    /// </summary>
    private const double PictureLine = 2, WhiteLine = 3;

    /// <summary>
    /// The optics of a thin opal mix straight and spread light by one share for the whole stack, so white that black hides from the opal still counts
    /// in it, by 5.1 at most; no eye would see it.
    /// </summary>
    private const double HiddenWhiteOnOpal = 5.5;

    private static readonly Stock
        Clear = Presses.Board(light: SheetLight.Clear) with { ReflectancePercent = 8, TransmittancePercent = 92 },
        Opal = Presses.Board(light: SheetLight.Opal) with { ReflectancePercent = 45, TransmittancePercent = 50 },
        White = Presses.Board() with { ReflectancePercent = 90 },
        Grey = Presses.Board() with { ReflectancePercent = 40 };

    public static TheoryData<string> Sheets() => ["clear", "opal", "white", "grey"];

    [Theory, MemberData(nameof(Sheets))]
    public void A_layer_is_called_unseen_exactly_when_the_look_stays_without_it(string sheet)
    {
        (Stock stock, LookSheet look) = Of(sheet);
        Parallel.ForEach(SmallStacks.UpTo(5), layers =>
        {
            LayerStack stack = new(layers, true, []);
            foreach (Viewer viewer in Enum.GetValues<Viewer>())
            {
                IReadOnlyList<LayerSight> sights = StackSight.Of(stack, stock, viewer);
                StackLight light = new(layers, look, viewer);
                for (int i = 0; i < layers.Count; i++)
                {
                    (double day, double lit) = light.ChangeWithout(i);
                    Agrees(sights[i].Day, day, layers[i], stack, stock, "by day");
                    if (viewer == Viewer.Front)
                        Agrees(sights[i].Lit, lit, layers[i], stack, stock, "lit");
                }
            }
        });
    }

    /// <summary>A picture that the judge says no one sees changes no view; one that it does not name changes at least one.</summary>
    [Theory, MemberData(nameof(Sheets))]
    public void The_judge_names_exactly_the_pictures_that_change_no_view(string sheet)
    {
        (Stock stock, LookSheet look) = Of(sheet);
        Parallel.ForEach(SmallStacks.UpTo(4).Where(l => l.Any(Picture)), layers =>
        {
            StackLight front = new(layers, look, Viewer.Front), back = new(layers, look, Viewer.Back);
            foreach (SeenFrom seenFrom in Enum.GetValues<SeenFrom>())
            {
                foreach (bool lit in new[] { false, true })
                {
                    LayerStack stack = new(layers, lit, [], seenFrom);
                    string[] named = [.. StackJudge.Judge(stack, stock).Where(f => f.Code == "stack-unseen").Select(f => f.What)];
                    foreach ((int i, Layer layer) in layers.Index().Where(l => Picture(l.Item)))
                    {
                        bool seen = front.ChangeWithout(i).Day > PictureLine || (lit && front.ChangeWithout(i).Lit > PictureLine)
                            || (seenFrom == SeenFrom.BothSides && back.ChangeWithout(i).Day > PictureLine);
                        Assert.Equal(seen, !named.Any(n => n.StartsWith(Invariant($"Layer {i + 1},"), StringComparison.Ordinal)));
                    }
                }
            }
        });
    }

    [Fact]
    public void All_stacks_are_looked_at() => Assert.Equal(7737, SmallStacks.UpTo(5).Count());

    [Fact]
    public void A_mask_shows_in_part_what_a_flood_hides_and_a_thin_white_veils()
    {
        Assert.Equal(Sight.Not, BehindWhite(WhiteSource.Flood).Day);
        Assert.Equal(Sight.Partly, BehindWhite(WhiteSource.MaskPicture).Day);
        Assert.Equal(Sight.Partly, BehindWhite(WhiteSource.Flood, percent: 60).Day);
        Assert.Equal(Sight.Not, BehindWhite(WhiteSource.UnderImage, page: 2).Day);
        Assert.Equal(Sight.Partly, BehindWhite(WhiteSource.UnderImage, page: 1).Day);
        Assert.Equal(Sight.Whole, BehindWhite(WhiteSource.Flood).Lit);
    }

    [Fact]
    public void A_window_in_block_out_lets_the_lamp_light_parts_of_the_picture()
    {
        Layer window = SmallStacks.Of(InkGroup.BlockOut, SheetFace.First) with { Source = WhiteSource.MaskPicture, ArtworkPage = 2, Negative = true };
        LayerStack stack = new([window, SmallStacks.Of(InkGroup.White, SheetFace.First), SmallStacks.Of(InkGroup.Colour, SheetFace.First)], true, []);
        Assert.Equal([Sight.Partly, Sight.Partly], StackSight.Of(stack, Clear, Viewer.Front).Skip(1).Select(s => s.Lit));
        Assert.Equal(Sight.Whole, StackSight.Of(stack, Clear, Viewer.Front)[2].Day);
    }

    // From the eye: white, then the picture of page 2 on white.
    private static LayerSight BehindWhite(WhiteSource source, double percent = 100, int page = 1) => StackSight.Of(
        new(
        [
            SmallStacks.Of(InkGroup.White, SheetFace.First), SmallStacks.Of(InkGroup.Colour, SheetFace.First) with { ArtworkPage = 2 },
            SmallStacks.Of(InkGroup.White, SheetFace.First) with { Source = source, StrengthPercent = percent, ArtworkPage = page },
        ], true, []), Clear, Viewer.Front)[1];

    private static bool Picture(Layer layer) => layer.Group == InkGroup.Colour;

    private static (Stock Stock, LookSheet Look) Of(string sheet)
    {
        Stock stock = sheet switch { "clear" => Clear, "opal" => Opal, "white" => White, _ => Grey };
        return (stock, StackLight.Sheet(stock));
    }

    private static void Agrees(Sight said, double change, Layer layer, LayerStack stack, Stock stock, string when)
    {
        bool behindBlack = said == Sight.Not && stock.Light == SheetLight.Opal && stack.Layers.Any(l => l.Group == InkGroup.BlockOut);
        double limit = layer.Group != InkGroup.White ? PictureLine : behindBlack ? HiddenWhiteOnOpal : WhiteLine;
        Assert.True(said == Sight.Not ? change < limit : change > limit, Invariant(
            $"{layer.Group} {when} of {string.Join(' ', StackSight.Path(stack, Viewer.Front).Select(i => i < 0 ? "sheet" : stack.Layers[i].Group.ToString()))} on {stock.Light}: said {said}, changes by {change:0.00}"));
    }
}
