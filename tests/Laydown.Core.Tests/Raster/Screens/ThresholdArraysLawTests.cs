using Laydown.Raster.Screens;

namespace Laydown.Core.Tests.Raster.Screens;

public sealed class ThresholdArraysLawTests
{
    [Fact]
    public void The_kept_arrays_are_those_that_the_program_makes()
    {
        // One alone and one that minds three others: the rest are made alike.
        ThresholdArray[] kept = [.. Enumerable.Range(0, ThresholdArrays.Count).Select(ThresholdArrays.Of)];
        foreach (int number in (int[])[0, 5])
            Assert.Equal(kept[number].Ranks, ThresholdArrays.Make(number, kept, CancellationToken.None).Ranks);
    }

    [Fact]
    public void Every_rank_occurs_once_in_each_array()
    {
        for (int number = 0; number < ThresholdArrays.Count + 2; number++)
            Assert.Equal(Enumerable.Range(0, 65536).Select(r => (ushort)r), ThresholdArrays.Of(number).Ranks.Order());
    }

    [Fact]
    public void Another_seed_gives_another_array()
    {
        ThresholdArray one = VoidAndCluster.Make(11, [], 0, CancellationToken.None), same = VoidAndCluster.Make(11, [], 0, CancellationToken.None);
        ThresholdArray other = VoidAndCluster.Make(12, [], 0, CancellationToken.None);
        Assert.Equal(one.Ranks, same.Ranks);
        Assert.True(one.Ranks.Zip(other.Ranks, (a, b) => a == b ? 1 : 0).Sum() < 20);
    }
}
