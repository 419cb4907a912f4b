using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Strips;

/// <summary>A filled strip.</summary>
/// <param name="Height">Height used.</param>
/// <param name="Spots">Where every copy lies.</param>
/// <param name="Least">No strip of this width that takes everything is lower.</param>
internal sealed record StripAnswer(int Height, IReadOnlyList<RectSpot> Spots, int Least);
