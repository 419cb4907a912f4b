namespace Laydown.Press.Machines;

/// <summary>The vacuum under the belt.</summary>
/// <param name="FullKpa">Under-pressure with all open area covered, kPa.</param>
/// <param name="OpenAreaPercent">Share of the belt's area that is hole, percent.</param>
public sealed record Vacuum(double FullKpa, double OpenAreaPercent);
