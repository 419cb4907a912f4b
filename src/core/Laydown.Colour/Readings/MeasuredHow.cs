namespace Laydown.Colour.Readings;

/// <summary>What a file of readings says of its measuring; empty where it says nothing.</summary>
/// <param name="Instrument">Instrument.</param>
/// <param name="Condition">Measurement condition M0, M1, M2 or M3 [ISO13655].</param>
/// <param name="Backing">Backing, white or black.</param>
/// <param name="Created">Date or time as the file gives it.</param>
/// <param name="Statement">Anything else it says of geometry, light and observer, in its own words.</param>
public sealed record MeasuredHow(string Instrument, string Condition, string Backing, string Created, string Statement)
{
    /// <summary>A file that says nothing.</summary>
    public static MeasuredHow Unsaid { get; } = new("", "", "", "", "");
}
