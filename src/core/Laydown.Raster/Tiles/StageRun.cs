namespace Laydown.Raster.Tiles;

/// <summary>Runs stages over one tile, with two tiles of scratch that are used again. One for each worker.</summary>
internal sealed class StageRun
{
    private readonly Tile[] kept = [new(1, 1, 1), new(1, 1, 1)];

    /// <summary>How far the stages look to each side, all together.</summary>
    public static int ReachOf(IReadOnlyList<ITileStage> stages)
    {
        int reach = 0;
        for (int step = 0; step < stages.Count; step++)
            reach += stages[step].ReachPixels;
        return reach;
    }

    /// <summary>How many inks come out.</summary>
    public static int InksOf(IReadOnlyList<ITileStage> stages, int sourceInks)
    {
        for (int step = 0; step < stages.Count; step++)
            sourceInks = stages[step].TargetInks(sourceInks);
        return sourceInks;
    }

    /// <summary>The result for the middle of <paramref name="source"/>, without the margin the stages look at.</summary>
    /// <param name="stages">One behind the other; without any, the source itself is the result.</param>
    /// <param name="source">Its place is set; larger than the result by the reach on each side. Left as it is.</param>
    /// <returns>A tile that holds until the next call.</returns>
    public Tile Through(IReadOnlyList<ITileStage> stages, Tile source)
    {
        Tile current = source;
        for (int step = 0; step < stages.Count; step++)
        {
            int reach = stages[step].ReachPixels;
            Tile next = kept[step & 1];
            next.Shape(stages[step].TargetInks(current.Inks), current.Rows - (2 * reach), current.Columns - (2 * reach));
            next.PlaceAt(current.FirstRow + reach, current.FirstColumn + reach);
            stages[step].Run(current, next);
            current = next;
        }

        return current;
    }
}
