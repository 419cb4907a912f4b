using Laydown.Layout.Packing;

namespace Laydown.Layout.Boards;

/// <summary>The rests of a board that is done: nothing more goes on it.</summary>
internal sealed class KeptRests(IReadOnlyList<Box> rests) : IFreeSpace
{
    /// <inheritdoc/>
    public bool TryPlace(PieceType type, out Spot spot)
    {
        spot = default;
        return false;
    }

    /// <inheritdoc/>
    public IReadOnlyList<Box> Leftovers(int leastSide) => [.. rests.Where(r => Math.Min(r.W, r.H) >= leastSide)];
}
