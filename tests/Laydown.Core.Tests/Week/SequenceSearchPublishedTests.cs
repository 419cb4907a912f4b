using Laydown.Instances.Sequences;
using Laydown.Layout.Search;
using Laydown.Plan.Week;

namespace Laydown.Core.Tests.Week;

public sealed class SequenceSearchPublishedTests
{
    /// <summary>
    /// Proven optima of [Cicirello2003] by [TanakaAraki2013]. The gaps in percent allowed here are those of an earlier search; so few iterations end before any orders
    /// are crossed. What five seconds give stands in docs/benchmarks/week.md.
    /// </summary>
    [Theory]
    [InlineData("wt_sds_9.instance", 5660, 5)]
    [InlineData("wt_sds_41.instance", 69102, 7)]
    [InlineData("wt_sds_73.instance", 28785, 2)]
    [InlineData("wt_sds_97.instance", 407590, 1.5)]
    public void Comes_near_the_proven_optimum_and_never_below(string file, long optimum, double percent)
    {
        SequenceInstance instance = WeekData.Instance(file);
        SequenceAnswer answer = SequenceSearch.Solve(WeekData.Problem(instance), new SearchRules(1, 1500), null, CancellationToken.None);
        Assert.Empty(SequenceChecker.Faults(instance, answer.Order, answer.Cost));
        Assert.InRange(answer.Cost, optimum, (long)(optimum * (1 + (percent / 100))));
    }
}
