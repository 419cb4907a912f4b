namespace Laydown.Layout.Packing;

/// <summary>What is still bare on one sheet; takes pieces one after the other.</summary>
internal interface IFreeSpace
{
    /// <summary>Puts a piece where the rule of this space likes it best; false where it fits nowhere.</summary>
    bool TryPlace(PieceType type, out Spot spot);

    /// <summary>Bare rectangles, largest first, that do not share any area and can really be cut free.</summary>
    IReadOnlyList<Box> Leftovers(int leastSide);
}
