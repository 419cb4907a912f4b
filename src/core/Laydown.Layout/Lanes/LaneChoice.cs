namespace Laydown.Layout.Lanes;

/// <summary>Starts of the lanes and the zones to open.</summary>
/// <param name="Types">Which sheets each lane takes, from the belt's origin.</param>
/// <param name="StartsMm">Ascending, mm across the belt.</param>
/// <param name="Open">Indices of the open zones, ascending.</param>
/// <param name="UncoveredMm">Open length under no blank, mm.</param>
/// <param name="Cost">The same, and what breaks ties.</param>
internal sealed record LaneChoice(IReadOnlyList<int> Types, IReadOnlyList<double> StartsMm, IReadOnlyList<int> Open, double UncoveredMm, LaneCost Cost);
