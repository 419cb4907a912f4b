using Laydown.Layout.Packing;

namespace Laydown.Layout.Guillotine;

/// <summary>A part of a bare sheet after its keep-outs were cut out.</summary>
/// <param name="Place">Where it lies.</param>
/// <param name="Stage">How many stages of cuts freed it.</param>
/// <param name="Upright">Direction of the last of them; tells nothing at stage 0.</param>
internal readonly record struct SheetPart(Box Place, int Stage, bool Upright);
