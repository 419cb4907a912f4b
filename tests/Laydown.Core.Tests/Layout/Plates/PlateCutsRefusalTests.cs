using Laydown.Layout.Plates;

namespace Laydown.Core.Tests.Layout.Plates;

public sealed class PlateCutsRefusalTests
{
    [Fact]
    public void A_pane_larger_than_a_plate_is_refused_by_name()
    {
        PlateProblem problem = new(6000, 3210, [], [new("fits", 100, 100, 0), new("giant", 3300, 3300, 1)], new(100, 3500, 100, 20));
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => PlateCuts.Solve(problem, new(Iterations: 1), null, CancellationToken.None));
        Assert.Contains("giant", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Plates_that_hold_nothing_for_defects_are_refused()
    {
        PlateProblem problem = new(1000, 1000, [[new(0, 0, 1000, 1000)]], [new("a", 500, 500, 0)], new());
        Assert.Throws<ArgumentException>(() => PlateCuts.Solve(problem, new(Iterations: 1), null, CancellationToken.None));
    }
}
