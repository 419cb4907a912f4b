namespace Laydown.Instances.Polygons;

/// <summary>One shape put down: turned counter-clockwise about the origin of its own coordinates, then shifted.</summary>
/// <param name="Item">Index of its item.</param>
/// <param name="Board">Index of the board it lies on; 0 on a strip.</param>
/// <param name="X">Shift to the right.</param>
/// <param name="Y">Shift upward.</param>
/// <param name="Degrees">Turn.</param>
public sealed record PlacedPolygon(int Item, int Board, double X, double Y, double Degrees);
