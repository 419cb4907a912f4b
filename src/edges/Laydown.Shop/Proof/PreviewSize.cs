namespace Laydown.Shop.Proof;

/// <summary>A quick preview of a pair as a screen gets it: light by room and lamp as <see cref="TileCode"/> writes it, in one piece.</summary>
/// <param name="WidthPx">Pixels across.</param>
/// <param name="HeightPx">Pixels down.</param>
/// <param name="RoomMost">Light of the highest code, room.</param>
/// <param name="LampMost">Light of the highest code, lamp.</param>
/// <param name="UncolouredByRoom">The piece without colour by a room of one: linear red, green, blue.</param>
/// <param name="UncolouredByLamp">The same by a lamp of one.</param>
/// <param name="Milliseconds">How long it took, the reading of the pictures left out.</param>
public sealed record PreviewSize(
    int WidthPx, int HeightPx, double RoomMost, double LampMost, IReadOnlyList<double> UncolouredByRoom, IReadOnlyList<double> UncolouredByLamp, double Milliseconds);
