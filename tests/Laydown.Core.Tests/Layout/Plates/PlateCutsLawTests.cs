using Laydown.Instances.Plates;
using Laydown.Instances.Rectangles;
using Laydown.Layout.Plates;

namespace Laydown.Core.Tests.Layout.Plates;

public sealed class PlateCutsLawTests
{
    [Fact]
    public void Every_cutting_told_on_the_way_keeps_all_rules_and_wastes_less_than_the_one_before()
    {
        for (int seed = 1; seed <= 12; seed++)
        {
            RectInstance instance = PlateData.Random(seed);
            List<PlateLayout> told = [];
            PlateLayout layout = PlateCuts.Solve(PlateData.Problem(instance), new(Iterations: 6, Workers: 2), told.Add, CancellationToken.None);

            Assert.All(told, l => Assert.Empty(PlateChecker.Faults(instance, PlateData.Cut(l), new())));
            Assert.All(told, l => Assert.Equal(PlateChecker.Waste(instance, PlateData.Cut(l)), l.Waste));
            Assert.Equal(told.Select(l => l.Waste).Distinct().OrderDescending(), told.Select(l => l.Waste));
            Assert.Same(told[^1], layout);
        }
    }

    [Fact]
    public void The_same_passes_and_workers_give_the_same_cutting()
    {
        PlateProblem problem = PlateData.Problem(PlateData.Random(5));
        string one = Words(PlateCuts.Solve(problem, new(Iterations: 5, Workers: 2), null, CancellationToken.None));
        Assert.Equal(one, Words(PlateCuts.Solve(problem, new(Iterations: 5, Workers: 2), null, CancellationToken.None)));
    }

    [Fact]
    public void A_stop_at_once_still_gives_a_whole_cutting()
    {
        RectInstance instance = PlateData.Random(7);
        PlateLayout layout = PlateCuts.Solve(PlateData.Problem(instance), new(), null, new CancellationToken(canceled: true));
        Assert.Empty(PlateChecker.Faults(instance, PlateData.Cut(layout), new()));
    }

    // Two panes that fill a plate but for the rest to keep: nothing is wasted.
    [Fact]
    public void A_pane_as_high_as_the_plate_wastes_nothing_and_leaves_the_rest()
    {
        PlateProblem problem = new(6000, 3210, [], [new("a", 1500, 3210, 0), new("b", 1500, 1605, 0), new("c", 1500, 1605, 1)], new(100, 3500, 100, 20));
        PlateLayout layout = PlateCuts.Solve(problem, new(Iterations: 4), null, CancellationToken.None);
        Assert.Equal(0, layout.Waste);
        Assert.Equal(3000, Assert.Single(layout.Plates)[^1].Right);
    }

    [Fact]
    public void Panes_alike_in_stacks_of_their_own_are_cut_as_well_as_in_one_stack()
    {
        (int Width, int Height)[] sizes = [(488, 1320), (902, 1003), (521, 660)];
        long Waste(bool alone)
        {
            PlateItem[] panes = [.. Enumerable.Range(0, 45).Select(i => new PlateItem("pane", sizes[i / 15].Width, sizes[i / 15].Height, alone ? i : i / 15))];
            return PlateCuts.Solve(new(6000, 3210, [], panes, new(100, 3500, 100, 20)), new(Iterations: 6), null, CancellationToken.None).Waste;
        }

        Assert.Equal(Waste(alone: false), Waste(alone: true));
    }

    private static string Words(PlateLayout layout) => string.Join(';', layout.Plates.SelectMany(p => p.SelectMany(c => c.Rows.SelectMany(r => r.Cells.SelectMany(l => l.Spots)))));
}
