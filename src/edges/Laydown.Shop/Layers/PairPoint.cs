namespace Laydown.Shop.Layers;

/// <summary>One place named in both pictures.</summary>
/// <param name="NightX">Across, in the night picture.</param>
/// <param name="NightY">Down, in the night picture.</param>
/// <param name="DayX">Across, in the day picture as it lies on the piece.</param>
/// <param name="DayY">Down.</param>
/// <param name="Unit">What the four are counted in.</param>
public sealed record PairPoint(double NightX, double NightY, double DayX, double DayY, PairUnit Unit);
