using Laydown.Layout.Packing;

namespace Laydown.Layout.Rectangles;

/// <summary>A copy of a piece put down.</summary>
/// <param name="Piece">Index of its piece.</param>
/// <param name="Place">Its grown rectangle.</param>
/// <param name="Turned">Whether it lies turned.</param>
internal readonly record struct RectSpot(int Piece, Box Place, bool Turned);
