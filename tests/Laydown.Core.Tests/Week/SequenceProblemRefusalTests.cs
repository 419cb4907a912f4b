using Laydown.Plan.Week;

namespace Laydown.Core.Tests.Week;

public sealed class SequenceProblemRefusalTests
{
    private static readonly SequenceJob Job = new("a", 5, 10, 1);

    [Fact]
    public void A_table_of_another_size_is_refused() => Assert.Contains("1 × 1", Assert.Throws<ArgumentException>(() => new SequenceProblem([Job], [0], [[0], [0]])).Message);

    [Fact]
    public void A_set_up_below_nothing_is_refused() => Assert.Contains("below 0", Assert.Throws<ArgumentException>(() => new SequenceProblem([Job], [-1], [[0]])).Message);

    [Fact]
    public void A_length_below_nothing_is_refused_by_the_name_of_its_job() =>
        Assert.Contains("Job a: found length -5", Assert.Throws<ArgumentException>(() => new SequenceProblem([Job with { Length = -5 }], [0], [[0]])).Message);

    [Fact]
    public void Times_too_far_off_are_refused() => Assert.Contains("units in sum", Assert.Throws<ArgumentException>(() => new SequenceProblem([Job with { Due = int.MinValue }], [0], [[0]])).Message);

    [Fact]
    public void A_place_that_is_no_jobs_has_no_cost() => Assert.Throws<ArgumentOutOfRangeException>(() => new SequenceProblem([Job], [0], [[0]]).CostOf([1]));
}
