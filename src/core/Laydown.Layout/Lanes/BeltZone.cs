namespace Laydown.Layout.Lanes;

/// <summary>A part of the belt whose vacuum can be shut, as the layout sees it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="StartMm">Near limit across the belt, mm.</param>
/// <param name="WidthMm">Width across the belt, mm, over 0.</param>
public sealed record BeltZone(string Id, double StartMm, double WidthMm)
{
    /// <summary>Far limit across the belt, mm.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double EndMm => StartMm + WidthMm;

    /// <summary>Length of this zone under a strip of the belt, mm.</summary>
    public double Under(double startMm, double widthMm) => Math.Max(0, Math.Min(EndMm, startMm + widthMm) - Math.Max(StartMm, startMm));
}
