namespace Laydown.Press.Machines;

/// <summary>A part of the belt whose vacuum can be shut.</summary>
/// <param name="Id">What is written on its valve, such as <c>A</c>.</param>
/// <param name="StartMm">Near limit across the belt from its origin, mm.</param>
/// <param name="WidthMm">Width across the belt, mm, over 0.</param>
public sealed record VacuumZone(string Id, double StartMm, double WidthMm)
{
    /// <summary>Far limit across the belt, mm.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double EndMm => StartMm + WidthMm;
}
