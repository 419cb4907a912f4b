using Laydown.Instances.Rectangles;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Strips;

namespace Laydown.Core.Tests.Layout;

/// <summary>Strips whose pieces fill them without waste, so that the least length is known. [HopperTurton2001] [Burke2004] [Hopper2000]</summary>
public sealed class StripSearchPublishedTests
{
    /// <summary>Name, may turn, and what is wanted over the least length: nothing, but one step (of 60, of 150) where this many fillings do not do.</summary>
    [Theory]
    [InlineData("C1_1", false, 0)]
    [InlineData("C2_1", false, 0)]
    [InlineData("C3_1", false, 0)]
    [InlineData("C4_1", false, 1)]
    [InlineData("BKW1", false, 0)]
    [InlineData("BKW3", false, 0)]
    [InlineData("BKW9", false, 1)]
    [InlineData("n3c", false, 0)]
    [InlineData("t1b", false, 0)]
    [InlineData("t2b", false, 0)]
    [InlineData("C1_1", true, 0)]
    [InlineData("C2_1", true, 0)]
    [InlineData("C3_1", true, 0)]
    [InlineData("C4_1", true, 0)]
    [InlineData("BKW3", true, 0)]
    public void The_least_length_is_reached(string name, bool mayTurn, int over)
    {
        RectInstance instance = RectInstance.Read(LayoutData.Folder("strips"), name);
        RectBin strip = instance.Bins[0];
        StripAnswer answer = StripSearch.Solve(
            new(strip.Width, [.. instance.Items.Select((p, i) => new RectPiece(Invariant($"{i}"), p.Width, p.Height, p.Copies, mayTurn))]), new(Seed: 1, Iterations: 20_000), null, default);

        Assert.Empty(StripChecks.Faults(instance, answer, mayTurn));
        Assert.InRange(answer.Height, strip.Height, strip.Height + over);
        Assert.True(answer.Least <= strip.Height);
    }
}
