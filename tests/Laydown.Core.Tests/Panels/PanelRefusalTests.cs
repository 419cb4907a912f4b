using Laydown.Optics.Looks;
using Laydown.Optics.Panels;

namespace Laydown.Core.Tests.Panels;

/// <summary>What a panel cannot be.</summary>
public sealed class PanelRefusalTests
{
    [Fact]
    public void Layers_that_are_not_colour_white_colour_are_named()
    {
        LookLayer colour = new(LookFace.First, Duplex.Cmyk), white = new(LookFace.First, [LookInk.White(8)]);
        ArgumentException fault = Assert.Throws<ArgumentException>(() => new PanelStack(LookSheet.Clear(0.92), [white, colour], LookFace.First, Duplex.Limits));
        Assert.Contains("found colour, white; wanted colour, white, colour", fault.Message, StringComparison.Ordinal);
        Assert.Contains("no colour and no white", Assert.Throws<ArgumentException>(
            () => new PanelStack(LookSheet.Clear(0.92), [], LookFace.First, Duplex.Limits)).Message, StringComparison.Ordinal);
        Assert.True(PanelStack.Fits([colour, white, colour], LookFace.Second));
        Assert.False(PanelStack.Fits([white, colour, white], LookFace.First));
    }

    [Fact]
    public void Limits_for_other_inks_and_values_out_of_range_are_refused()
    {
        LookLayer colour = new(LookFace.First, Duplex.Cmyk), white = new(LookFace.First, [LookInk.White(8)]);
        Assert.Throws<ArgumentException>(() => new PanelStack(LookSheet.Clear(0.92), [colour, white, colour], LookFace.First, new([1], 1, [1], 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PanelLimits([1.2], 1, [1], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PanelWish.Balanced with { NightWeight = 1 } is { } ? new PanelWish(0, WhiteUse.Fixed, [1], null, null, true, 1500) : null);
        Assert.Throws<ArgumentException>(() => new PanelWish(1, WhiteUse.Free, [1], null, null, true, 1500));
        Assert.Throws<ArgumentException>(() => new PairPicture(2, 2, new float[23]));
        Assert.Throws<ArgumentException>(() => new PanelModel(Duplex.SplitFaces(), Scene.Day(500, 0.5), Scene.Lit()));
    }
}
