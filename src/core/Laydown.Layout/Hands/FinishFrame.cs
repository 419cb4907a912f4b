using Laydown.Layout.Packing;

namespace Laydown.Layout.Hands;

/// <summary>A sheet with locked pieces that is to be filled on.</summary>
/// <param name="Kept">The sheet with its locked pieces alone.</param>
/// <param name="Covered">Their places, grown.</param>
/// <param name="Bare">What cuts around them leave bare; null where they do not come apart or the cut is free.</param>
internal sealed record FinishFrame(HandSheet Kept, IReadOnlyList<Box> Covered, IReadOnlyList<Box>? Bare);
