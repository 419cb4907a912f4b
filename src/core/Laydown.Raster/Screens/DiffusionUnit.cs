namespace Laydown.Raster.Screens;

/// <summary>A block of one ink that is diffused by itself.</summary>
/// <param name="Ink">Plane of the tile.</param>
/// <param name="Row">First row, counted from the first behind the tile's margin.</param>
/// <param name="Column">First column, likewise.</param>
/// <param name="Rows">Rows that are wanted.</param>
/// <param name="Columns">Columns that are wanted.</param>
internal readonly record struct DiffusionUnit(int Ink, int Row, int Column, int Rows, int Columns);
