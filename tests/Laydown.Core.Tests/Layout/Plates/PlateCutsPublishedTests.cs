using Laydown.Instances.Plates;
using Laydown.Instances.Rectangles;
using Laydown.Layout.Plates;

namespace Laydown.Core.Tests.Layout.Plates;

/// <summary>Instances of [ROADEF2018], the best published waste beside them.</summary>
public sealed class PlateCutsPublishedTests
{
    /// <summary>The smallest is met to the mm²; the other comes within the 0.8 points of the panes' area that are wanted of long runs.</summary>
    [Theory]
    [InlineData("A1", 6, 0)]
    [InlineData("A19", 16, 0.008)]
    public void Waste_comes_to_the_best_published(string name, int passes, double share)
    {
        RectInstance instance = PlateData.Published(name);
        PlateLayout layout = PlateCuts.Solve(PlateData.Problem(instance), new(Iterations: passes, Workers: 2), null, CancellationToken.None);

        Assert.Empty(PlateChecker.Faults(instance, PlateData.Cut(layout), new()));
        Assert.Equal(PlateChecker.Waste(instance, PlateData.Cut(layout)), layout.Waste);
        Assert.InRange(layout.Waste, 0, PlateData.PublishedWaste(name) + (share * instance.ItemArea));
    }
}
