namespace Laydown.Layout.Lanes;

/// <summary>Equal sheets as the search sees them.</summary>
/// <param name="Width">Width across the belt, µm.</param>
/// <param name="Least">Fewest lanes for them.</param>
/// <param name="Most">Most lanes for them.</param>
internal readonly record struct LaneType(int Width, int Least, int Most);
