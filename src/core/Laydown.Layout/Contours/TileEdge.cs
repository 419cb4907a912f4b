namespace Laydown.Layout.Contours;

/// <summary>A side of the free room, room on its left.</summary>
internal readonly record struct TileEdge(TilePoint From, TilePoint To)
{
    internal TilePoint Way => To - From;
}
