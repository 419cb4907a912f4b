namespace Laydown.Press.Machines;

/// <summary>How exactly a press puts its dots, as its last adjustment left it.</summary>
/// <param name="FeedScaleUmPerM">Feed too far (over 0) or too short (under 0), µm for each metre, −10 000 to 10 000.</param>
/// <param name="FeedJitterUm">Standard deviation of where the sheet stands at a scan, µm, 0 to 1000.</param>
/// <param name="TwoWayUm">Distance along the scan between dots fired forth and dots fired back, µm, 0 to 3000.</param>
public sealed record DotPlacement(double FeedScaleUmPerM, double FeedJitterUm, double TwoWayUm);
