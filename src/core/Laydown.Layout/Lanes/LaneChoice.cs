namespace Laydown.Layout.Lanes;

/// <summary>Starts of the lanes and the zones to open.</summary>
/// <param name="StartsMm">Ascending, mm across the belt.</param>
/// <param name="Open">Indices of the open zones.</param>
/// <param name="UncoveredMm">Open length under no blank, mm.</param>
internal sealed record LaneChoice(IReadOnlyList<double> StartsMm, IReadOnlyList<int> Open, double UncoveredMm);
