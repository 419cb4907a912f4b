namespace Laydown.Shop.Layers;

/// <summary>A panel to be looked at before it is solved.</summary>
/// <param name="ItemId">The item; its pages 1 and 2 are the pictures.</param>
/// <param name="DayPlacing">How the day picture is laid on the piece.</param>
/// <param name="NightPlacing">How the night picture is laid on it.</param>
/// <param name="Points">Places named in both: none, 2 or 3.</param>
/// <param name="NightWeight">Weight of the night picture, 0.01 to 100.</param>
/// <param name="WhiteStrength">Strength of the white, share of full laydown, 0.01 to 1; null as the build orders it.</param>
/// <param name="LiftPercent">L* that day black becomes, 0 to 60; null for the one chosen for the pair when it was first looked at.</param>
/// <param name="NightExposure">White of the night picture over the light of the bare panel, 0.02 to 1; null as above.</param>
/// <param name="MostPixels">Most pixels, 1000 to 1 000 000.</param>
public sealed record PreviewRequest(
    string ItemId,
    PairPlacing DayPlacing,
    PairPlacing NightPlacing,
    IReadOnlyList<PairPoint> Points,
    double NightWeight,
    double? WhiteStrength,
    double? LiftPercent,
    double? NightExposure,
    int MostPixels = 1_000_000)
{
    /// <summary>Balanced, everything else as it comes.</summary>
    public static PreviewRequest Of(string itemId) => new(itemId, PairPlacing.Careful, PairPlacing.Careful, [], 1, null, null, null);
}
