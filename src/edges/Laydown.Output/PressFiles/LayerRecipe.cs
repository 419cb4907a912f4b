using Laydown.Raster.Tiles;

namespace Laydown.Output.PressFiles;

/// <summary>How one layer of one item is made from the plates of its page.</summary>
/// <param name="Stages">The way from plates to laydown.</param>
/// <param name="Planes">What comes out, in the order of the samples.</param>
/// <param name="LimitPercent">Largest sum of the planes at one pixel, percent of one full ink.</param>
internal sealed record LayerRecipe(StageChain Stages, IReadOnlyList<InkPlane> Planes, double LimitPercent);
