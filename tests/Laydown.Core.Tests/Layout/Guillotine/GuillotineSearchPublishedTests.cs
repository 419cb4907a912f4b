using Laydown.Instances.Rectangles;
using Laydown.Layout.Guillotine;
using Laydown.Layout.Rectangles;
using static Laydown.Core.Tests.Layout.LayoutData;

namespace Laydown.Core.Tests.Layout.Guillotine;

/// <summary>Published instances: tests/data/layout/README.md names them and their sources.</summary>
public sealed class GuillotineSearchPublishedTests(ITestOutputHelper output)
{
    private static readonly ILookup<string, string[]> Items = Rows("2bp-classes-items.csv").ToLookup(r => r[0]);

    // What a short search of 2 000 steps may lose over all seventy instances, percent of the published sum of edge-to-edge cuts in three stages.
    [Theory]
    [InlineData(false, 6, 1.8)]
    [InlineData(true, 7, 1.8)]
    public void Board_counts_stay_within_the_stated_excess_of_the_published(bool mayTurn, int column, double excessPercent)
    {
        (double ours, int published, int count) = (0, 0, 0);
        foreach (string[] row in Rows("2bp-classes-boards.csv"))
        {
            RectInstance instance = new(
                row[0], [new(Number(row[1]), Number(row[2]), null, 1)], [.. Items[row[0]].Select(r => new RectItem(Number(r[1]), Number(r[2]), 1, -1))], [],
                new Dictionary<string, string>());
            RectLayout layout = GuillotineSearch.Solve(GuillotineCase.Problem(instance, mayTurn), new(1, 2000), null, default);
            double boards = GuillotineCase.Cost(instance, layout);

            Assert.Empty(RectChecker.Faults(instance, GuillotineCase.Bins(layout), new(mayTurn, Guillotine: true)));
            Assert.InRange(boards, Number(row[3]), Number(row[column]) + 1 + (Number(row[column]) / 10));
            (ours, published, count) = (ours + boards, published + Number(row[column]), count + 1);
        }

        output.WriteLine(Invariant($"turning {mayTurn}: {ours} boards for {published} published"));
        Assert.Equal(70, count);
        Assert.InRange(ours, published * 0.99, published * (1 + (excessPercent / 100)));
    }

    // M1a [HopperTurton2002]: all areas of boards are multiples of 100, so that no set of boards of less area holds the pieces.
    [Fact]
    public void Boards_of_several_sizes_are_chosen_at_the_least_area_there_can_be()
    {
        RectInstance instance = RectInstance.Read(Folder(""), "M1a");
        RectLayout layout = GuillotineSearch.Solve(GuillotineCase.Problem(instance, false), new(1, 30_000), null, default);
        Assert.Empty(RectChecker.Faults(instance, GuillotineCase.Bins(layout), new(false, Guillotine: true)));
        Assert.Equal(100 * Math.Ceiling(instance.ItemArea / 100.0), GuillotineCase.Cost(instance, layout));
    }
}
