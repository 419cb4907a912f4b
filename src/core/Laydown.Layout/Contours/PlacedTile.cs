namespace Laydown.Layout.Contours;

/// <summary>A tile and the shift it lies at.</summary>
internal readonly record struct PlacedTile(Tile Tile, TilePoint At);
