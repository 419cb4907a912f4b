using Laydown.Instances.Panels;
using Laydown.Layout.Panels;

namespace Laydown.Core.Tests.Layout;

public sealed class PanelAxisLawTests
{
    // Kinds of the generator, in its order.
    private static readonly PanelWidths[] Kinds = [PanelWidths.Equal, PanelWidths.Free, PanelWidths.FullAndRest, PanelWidths.Given];

    [Fact]
    public void Every_small_axis_of_the_generator_is_parted_as_by_trying_all()
    {
        int[] parted = new int[4];
        for (int seed = 1; seed <= 1200; seed++)
        {
            PanelInstance axis = PanelGenerator.Small(seed);
            PanelAnswer? best = PanelBrute.Best(axis);
            PanelAnswer? ours = Solved(axis);

            Assert.True((best is null) == (ours is null), Invariant($"seed {seed}: tried {best}, found {ours}"));
            if (best is null || ours is null)
                continue;
            Assert.Equal(best.Starts, ours.Starts);
            Assert.Equal(best.Ends, ours.Ends);
            Assert.Equal((best.Cost, best.Spread), (ours.Cost, ours.Spread));
            Assert.Empty(PanelChecker.Faults(axis, ours));
            if (ours.Starts.Count > 1)
                parted[axis.Kind]++;
        }

        // The generator would prove nothing if few axes could be parted.
        Assert.All(parted, p => Assert.True(p > 60, Invariant($"{string.Join(", ", parted)} axes of each kind in several panels")));
    }

    [Fact]
    public void Axes_as_long_as_a_shop_has_them_are_parted_as_well_as_by_a_plain_table()
    {
        for (int seed = 1; seed <= 6; seed++)
        {
            PanelInstance axis = PanelGenerator.Large(seed * 17);
            (int Count, long Cost, long Spread)? best = PanelTable.Best(axis, 24);
            PanelAnswer? ours = Solved(axis);

            Assert.Equal(best, ours is null ? null : (ours.Starts.Count, ours.Cost, ours.Spread));
            if (ours is not null)
                Assert.Empty(PanelChecker.Faults(axis, ours));
        }
    }

    private static PanelAnswer? Solved(PanelInstance axis)
    {
        bool[] near = new bool[(2 * axis.Length) + 1];
        for (int twice = 0; twice < near.Length; twice++)
            near[twice] = axis.Wanted.Any(w => Math.Abs(twice - (2 * w)) <= 2 * axis.Slack);
        SeamProfile seams = new([.. axis.Cost], axis.Wanted.Count == 0 ? null : near, axis.OnlyWanted, axis.Elsewhere);
        AxisAnswer? answer = AxisSplit.Solve(new(axis.Length, axis.Most, axis.Least, axis.OverlapLeast, axis.OverlapMost, Kinds[axis.Kind], axis.Given), seams);
        return answer is null ? null : new(answer.Starts, answer.Ends, answer.Cost, answer.Spread);
    }
}
