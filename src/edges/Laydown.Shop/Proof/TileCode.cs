using System.IO.Compression;

namespace Laydown.Shop.Proof;

/// <summary>How the light of a tile is written: six channels of 10 bits, each by its differences from pixel to pixel, packed with zlib.</summary>
/// <remarks>
/// Channels: room red, green, blue, lamp red, green, blue, each rows × columns. Code = round(1023 · √(light ÷ most)), what is under 0 being 0: even steps for the eye. Of every row the
/// difference to the pixel on the left is kept (the first to the one above), folded to an even number where it is not under 0 and an odd one where it is, and all low bytes are
/// written before all high bytes, so that the packing finds long runs [RFC1950].
/// </remarks>
public static class TileCode
{
    /// <summary>Channels of a tile.</summary>
    public const int Channels = 6;

    private const int MostCode = 1023;

    /// <summary>Writes a tile.</summary>
    /// <param name="room">Linear light by the room, rows × columns × 3.</param>
    /// <param name="lamp">The same by the lamp.</param>
    /// <param name="columns">Pixels across.</param>
    /// <param name="roomMost">Light of the highest code, room.</param>
    /// <param name="lampMost">Light of the highest code, lamp.</param>
    /// <exception cref="ArgumentException">The lengths do not fit.</exception>
    public static byte[] Write(ReadOnlySpan<float> room, ReadOnlySpan<float> lamp, int columns, double roomMost, double lampMost)
    {
        if (room.Length != lamp.Length || columns < 1 || room.Length % (3 * columns) != 0)
            throw new ArgumentException(Invariant($"Tile: found {room.Length} and {lamp.Length} values in rows of {columns}; wanted whole rows of 3 for each pixel."), nameof(room));
        int pixels = room.Length / 3;
        byte[] bytes = new byte[2 * Channels * pixels];
        for (int channel = 0; channel < Channels; channel++)
        {
            ReadOnlySpan<float> light = channel < 3 ? room : lamp;
            Fold(light[(channel % 3)..], columns, 1 / (float)(channel < 3 ? roomMost : lampMost), bytes, channel * pixels, Channels * pixels);
        }

        using MemoryStream packed = new();
        using (ZLibStream zip = new(packed, CompressionLevel.Fastest))
            zip.Write(bytes);
        return packed.ToArray();
    }

    /// <summary>Reads a tile back, as a screen does: linear light of the six channels, channel × rows × columns.</summary>
    /// <param name="tile">The bytes.</param>
    /// <param name="rows">Pixels down.</param>
    /// <param name="columns">Pixels across.</param>
    /// <param name="roomMost">Light of the highest code, room.</param>
    /// <param name="lampMost">Light of the highest code, lamp.</param>
    public static float[] Read(byte[] tile, int rows, int columns, double roomMost, double lampMost)
    {
        int pixels = rows * columns, count = Channels * pixels;
        byte[] bytes = new byte[2 * count];
        using (ZLibStream zip = new(new MemoryStream(tile), CompressionMode.Decompress))
            zip.ReadExactly(bytes);
        float[] light = new float[count];
        for (int channel = 0; channel < Channels; channel++)
        {
            int above = 0, code = 0;
            for (int at = 0; at < pixels; at++)
            {
                int folded = bytes[(channel * pixels) + at] | (bytes[count + (channel * pixels) + at] << 8);
                code = (at % columns == 0 ? above : code) + ((folded & 1) == 0 ? folded >> 1 : -((folded + 1) >> 1));
                above = at % columns == 0 ? code : above;
                float part = code / (float)MostCode;
                light[(channel * pixels) + at] = part * part * (float)(channel < 3 ? roomMost : lampMost);
            }
        }

        return light;
    }

    private static void Fold(ReadOnlySpan<float> light, int columns, float scale, byte[] bytes, int low, int toHigh)
    {
        int above = 0, before = 0, pixels = (light.Length + 2) / 3;
        for (int at = 0; at < pixels; at++)
        {
            int code = (int)((MostCode * MathF.Sqrt(Math.Clamp(light[3 * at] * scale, 0, 1))) + 0.5f);
            bool first = at % columns == 0;
            int difference = code - (first ? above : before);
            above = first ? code : above;
            before = code;
            int folded = difference >= 0 ? 2 * difference : (-2 * difference) - 1;
            bytes[low + at] = (byte)folded;
            bytes[low + at + toHigh] = (byte)(folded >> 8);
        }
    }
}
