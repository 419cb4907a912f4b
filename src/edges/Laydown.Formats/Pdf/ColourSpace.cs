namespace Laydown.Formats.Pdf;

/// <summary>A colour space as far as checks need it.</summary>
/// <param name="Label">Such as <c>DeviceCMYK</c>, <c>ICCBased(4)</c>, <c>Separation</c>, <c>DeviceN</c>, <c>Pattern</c>.</param>
/// <param name="Spots">Named separations it paints on; process inks left out.</param>
internal sealed record ColourSpace(string Label, IReadOnlyList<string> Spots)
{
    public static ColourSpace Grey { get; } = new("DeviceGray", []);
}
