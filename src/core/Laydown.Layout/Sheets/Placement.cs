using System.Text.Json.Serialization;
using Laydown.Measures;

namespace Laydown.Layout.Sheets;

/// <summary>One piece on one sheet.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="Copy">Which of its copies, from 1 over all sheets.</param>
/// <param name="Place">Printed rectangle on the sheet, mm from the sheet's lower left corner.</param>
/// <param name="Turned">Whether it lies on its side: turned by 90° or 270°.</param>
/// <param name="Part">For a panel, the part of the item's printed picture shown; null for the whole.</param>
/// <param name="AngleDegrees">How far it is turned counter-clockwise, degrees: 0, 90, 180 or 270; left out, 90 where it lies on its side, else 0.</param>
/// <param name="Locked">Whether a person put it there, so that no search may move it.</param>
public sealed record Placement(
    string PieceId, int Copy, RectMm Place, bool Turned, RectMm? Part = null, double AngleDegrees = 0, bool Locked = false)
{
    /// <summary>How far it is turned counter-clockwise, degrees: 0, 90, 180 or 270.</summary>
    public double AngleDegrees { get; init; } = Taken(AngleDegrees, Turned);

    /// <summary>The same in quarters of a turn counter-clockwise, 0 to 3.</summary>
    [JsonIgnore]
    public int QuarterTurns => (int)AngleDegrees / 90;

    // Layouts written before angles were kept say only whether a piece lies on its side.
    private static double Taken(double angle, bool turned) => (angle, turned) switch
    {
        (0, true) => 90,
        (0 or 180, false) or (90 or 270, true) => angle,
        _ => throw new ArgumentException(
            Invariant($"Placement: found {angle}°, {(turned ? "" : "not ")}on its side; wanted 0 or 180 upright, 90 or 270 on its side."), nameof(angle)),
    };
}
