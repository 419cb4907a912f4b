namespace Laydown.Plan.Log;

/// <summary>Thickness of a sheet as measured.</summary>
/// <param name="PointsMm">Four corners and the middle, mm; each over 0.</param>
public sealed record SheetThickness(IReadOnlyList<double> PointsMm)
{
    /// <summary>How many points are measured.</summary>
    public const int Points = 5;

    /// <summary>The highest point, mm: what the head height follows.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double HighestMm => PointsMm.Max();
}
