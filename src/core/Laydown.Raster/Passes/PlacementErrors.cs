namespace Laydown.Raster.Passes;

/// <summary>How far dots fall from where they should.</summary>
/// <param name="FeedScaleUmPerM">Feed too far (over 0) or too short (under 0), µm for each metre: the calibration of the feed to this
/// stock.</param>
/// <param name="FeedJitterUm">Standard deviation of where the sheet stands at a scan, µm, not under 0.</param>
/// <param name="TwoWayUm">Distance along the scan between dots fired forth and dots fired back, µm, not under 0.</param>
/// <param name="Seed">Another seed, another row of chance stands.</param>
public sealed record PlacementErrors(double FeedScaleUmPerM, double FeedJitterUm, double TwoWayUm, int Seed = 1)
{
    /// <summary>Every dot where it should be.</summary>
    public static PlacementErrors None { get; } = new(0, 0, 0);
}
