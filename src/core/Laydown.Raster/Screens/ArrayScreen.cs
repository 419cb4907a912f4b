using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>Screens by threshold arrays: one tone against one limit for each dot and drop, no neighbours.</summary>
/// <remarks>
/// Inks of one chain share an array: the dots of the next begin in its order where those of the one before end, so two of a chain fall on
/// each other
/// only where their sum exceeds the whole, and their sum is as even as one ink. Own way, no source; related in aim to the masks of
/// [Wang1999].
/// </remarks>
internal sealed class ArrayScreen : ILayerScreen
{
    private readonly Lanes lanes;
    private readonly ScreenChain[] chains;

    /// <summary>A screen of chains that hold each ink once.</summary>
    public ArrayScreen(IReadOnlyList<IReadOnlyList<int>> chains, DropLevels drops, Lanes lanes)
    {
        this.lanes = lanes;
        Inks = chains.Sum(c => c.Count);
        BitsPerDot = drops.BitsPerDot;
        DropMix mix = new(drops);
        this.chains = chains.Select((inks, number) => new ScreenChain(inks, ThresholdArrays.Of(number), mix, BitsPerDot)).ToArray();
    }

    /// <inheritdoc/>
    public int Inks { get; }

    /// <inheritdoc/>
    public int BitsPerDot { get; }

    /// <inheritdoc/>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int GridPixels => 64;

    /// <inheritdoc/>
    public void Run(Tile tile, int rows, int columns, DotRows target, int targetFirstColumn)
    {
        if (((tile.FirstColumn | targetFirstColumn) & 7) != 0)
            throw new ArgumentException(Invariant($"Columns {tile.FirstColumn} of the sheet, {targetFirstColumn} of the target: wanted multiples of 8."), nameof(tile));
        int first = targetFirstColumn * BitsPerDot / 8;
        foreach (ScreenChain chain in chains)
        {
            for (int row = 0; row < rows; row++)
                chain.Row(lanes, tile, row, columns, target, first);
        }
    }
}
