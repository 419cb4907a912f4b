namespace Laydown.Shop.Run;

/// <summary>Light of a part of a sheet before it is written: linear red, green and blue of every value.</summary>
/// <param name="part">The part.</param>
/// <param name="roomMost">Light of the highest code by the room.</param>
/// <param name="lampMost">The same by the lamp.</param>
internal sealed class PartLight(PressPart part, double roomMost, double lampMost)
{
    public PressPart Part => part;

    public double RoomMost => roomMost;

    public double LampMost => lampMost;

    public float[] Room { get; } = new float[3 * part.Rows * part.Columns];

    public float[] Lamp { get; } = new float[3 * part.Rows * part.Columns];
}
