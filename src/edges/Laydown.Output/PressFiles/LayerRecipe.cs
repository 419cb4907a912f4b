using Laydown.Raster.Tiles;

namespace Laydown.Output.PressFiles;

/// <summary>How one layer of one item is made from the plates of its page.</summary>
/// <param name="AtSource">Stages before plates are scaled: each looks at one pixel alone, so the fewer the pixels the better.</param>
/// <param name="AtPress">
/// Stages at the resolution of the result: distances in its pixels, and limits that scaling may have overshot. May be empty; never both are.
/// </param>
/// <param name="Planes">What comes out, in the order of the samples.</param>
/// <param name="LimitPercent">Largest sum of the planes at one pixel, percent of one full ink.</param>
/// <param name="PressRepeats">Whether the stages at press only hold once more what those at source hold: without scaling they change nothing.</param>
internal sealed record LayerRecipe(
    IReadOnlyList<ITileStage> AtSource, IReadOnlyList<ITileStage> AtPress, IReadOnlyList<InkPlane> Planes, double LimitPercent, bool PressRepeats = false)
{
    /// <summary>The way from plates to laydown without scaling: plates of the resolution the layer is wanted in. A new chain: each thread needs its own.</summary>
    public StageChain Chain() => new([.. AtSource, .. PressRepeats ? [] : AtPress]);
}
