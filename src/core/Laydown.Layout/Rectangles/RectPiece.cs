namespace Laydown.Layout.Rectangles;

/// <summary>A rectangle to be laid out.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Width">Width, grown by the gap.</param>
/// <param name="Height">Height, grown by the gap.</param>
/// <param name="Copies">How many; at least 1.</param>
/// <param name="MayTurn">Whether it may lie turned by 90°.</param>
/// <param name="Group">Pieces of one group, 0 or more, want to share sheets; −1 for none.</param>
internal sealed record RectPiece(string Id, int Width, int Height, int Copies, bool MayTurn, int Group = -1)
{
    internal long Area => (long)Width * Height;
}
