using Laydown.Raster.Screens;

namespace Laydown.Core.Tests.Raster.Screens;

public sealed class DotCountsLawTests
{
    [Theory, InlineData(1), InlineData(2)]
    public void Any_range_is_counted_as_dot_by_dot(int bits)
    {
        DotRows dots = new(1, 1, 301, bits);
        new Random(4).NextBytes(dots.Row(0, 0));
        Random chance = new(5);
        for (int round = 0; round < 400; round++)
        {
            int first = chance.Next(301), columns = chance.Next(301 - first + 1);
            long[] expected = new long[1 << bits], found = new long[1 << bits];
            for (int column = first; column < first + columns; column++)
                expected[dots[0, 0, column]]++;
            DotCounts.Add(dots.Row(0, 0), bits, first, columns, found);
            Assert.Equal(expected, found);
        }
    }
}
