namespace Laydown.Shop.Layers;

/// <summary>How a look changes when something at the press is not as reckoned.</summary>
/// <param name="What">What differs, such as <c>white −10 %</c>.</param>
/// <param name="DayMean">Mean change by day, ΔE00.</param>
/// <param name="DayP95">95th percentile by day, ΔE00.</param>
/// <param name="NightMean">Mean change with the lamp on, ΔE00.</param>
/// <param name="NightP95">95th percentile with the lamp on, ΔE00.</param>
public sealed record LookChange(string What, double DayMean, double DayP95, double NightMean, double NightP95);
