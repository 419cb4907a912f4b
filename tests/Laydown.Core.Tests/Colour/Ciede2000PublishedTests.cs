using Laydown.Colour.Spaces;

namespace Laydown.Core.Tests.Colour;

/// <summary>All 34 pairs of [Sharma2005], Table 1. Differences are printed to 4 decimals; the tolerance is half the last.</summary>
public sealed class Ciede2000PublishedTests
{
    public static IEnumerable<TheoryDataRow<int, Lab, Lab, double>> Pairs() => PublishedTable.Rows("colour/ciede2000-sharma2005.csv")
        .Select(r => new TheoryDataRow<int, Lab, Lab, double>((int)r[0], new(r[1], r[2], r[3]), new(r[4], r[5], r[6]), r[7]));

    [Theory, MemberData(nameof(Pairs))]
    public void Equals_the_printed_difference_in_both_directions(int pair, Lab one, Lab other, double printed)
    {
        Assert.InRange(pair, 1, 34);
        Assert.Equal(printed, Ciede2000.Between(one, other), tolerance: 0.00005);
        Assert.Equal(printed, Ciede2000.Between(other, one), tolerance: 0.00005);
    }

    [Fact]
    public void The_table_is_whole() => Assert.Equal(34, Pairs().Count());

    [Fact]
    public void Equal_colours_do_not_differ() => Assert.Equal(0, Ciede2000.Between(new(40, 10, -20), new(40, 10, -20)));
}
