using System.Text.Json.Serialization;

namespace Laydown.Layout.Hands;

/// <summary>A piece as a person laid it down; its size is that of the piece, so that nobody can change it by hand.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="XMm">Left edge of the printed rectangle, mm from the sheet's lower left corner.</param>
/// <param name="YMm">Lower edge, mm.</param>
/// <param name="Angle">How far it is turned counter-clockwise, degrees: 0, 90, 180 or 270.</param>
/// <param name="Locked">Whether it must stay where it lies when the rest is laid out anew.</param>
public sealed record HandSpot(string PieceId, double XMm, double YMm, int Angle = 0, bool Locked = false)
{
    /// <summary>Whether it lies on its side.</summary>
    [JsonIgnore]
    public bool Turned => Angle is 90 or 270;
}
