using Laydown.Layout.FreePacking;
using Laydown.Layout.Rectangles;

namespace Laydown.Core.Tests.Layout.FreePacking;

/// <summary>Counts of boards against the published ones: tests/data/layout/README.md names instances and source.</summary>
public sealed class FreeSearchPublishedTests(ITestOutputHelper output)
{
    // What so few tries may lose over all seventy instances, percent of the published sum.
    [Theory]
    [InlineData(false, 1.0)]
    [InlineData(true, 1.0)]
    public void Board_counts_lie_between_the_bound_and_the_stated_excess(bool mayTurn, double excessPercent)
    {
        (int ours, int published, int exact, int count, int proven) = (0, 0, 0, 0, 0);
        foreach ((string name, RectProblem problem, int areaBound, int best) in FreeCases.Published(mayTurn))
        {
            RectLayout layout = FreeSearch.Solve(problem, new(Seed: 1, Iterations: 3000), null, CancellationToken.None);
            int boards = layout.Sheets.Sum(s => s.Repeats);
            double bound = FreeBounds.Cost(new(problem));

            Assert.Empty(FreeCases.Faults(problem, layout));
            Assert.All(layout.Missing, m => Assert.Equal(0, m));
            Assert.True(bound >= areaBound && bound <= best, Invariant($"{name}: bound {bound} is not from {areaBound} to {best}"));
            Assert.InRange(boards, (int)bound, best + 1);
            (ours, published, exact, count) = (ours + boards, published + best, exact + (boards <= best ? 1 : 0), count + 1);
            proven += boards == (int)bound ? 1 : 0;
        }

        output.WriteLine(Invariant($"turning {mayTurn}: {ours} boards for {published} published, {exact} of {count} as published, {proven} proven"));
        Assert.Equal(70, count);
        Assert.InRange(ours, published * 0.99, published * (1 + (excessPercent / 100)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_first_answer_is_whole_and_loses_little(bool mayTurn)
    {
        (int ours, int published) = (0, 0);
        foreach ((string _, RectProblem problem, int _, int best) in FreeCases.Published(mayTurn))
        {
            RectLayout layout = FreeSearch.Solve(problem, new(Iterations: 0), null, CancellationToken.None);
            Assert.Empty(FreeCases.Faults(problem, layout));
            (ours, published) = (ours + layout.Sheets.Sum(s => s.Repeats), published + best);
        }

        output.WriteLine(Invariant($"turning {mayTurn}: {ours} boards for {published} published"));

        // Best of several plain orders and rules: about 1.5 % by common experience; twice that is allowed on this part of the family.
        Assert.InRange(ours, published, published * 1.03);
    }
}
