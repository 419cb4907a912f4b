using Laydown.Colour.Spectra;
using Laydown.Measures;

namespace Laydown.Optics.Looks;

/// <summary>The light a piece is seen in.</summary>
public sealed record Scene
{
    /// <summary>A scene.</summary>
    /// <param name="roomLux">Room light on the piece, lux, 0 to 200 000; with the lamp off over 0.</param>
    /// <param name="room">Its spectrum.</param>
    /// <param name="lampCdPerM2">Luminance of the lit diffuser behind the piece, cd/m²; 0 when the lamp is off.</param>
    /// <param name="lamp">Spectrum of the lamp.</param>
    /// <param name="backing">Reflectance of what stands behind the piece, an air gap away: 0.8 for a lamp box, 0.85 for a white wall,
    /// 0 to 0.99.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range, or there is no light at all.</exception>
    public Scene(double roomLux, Illuminant room, double lampCdPerM2, Illuminant lamp, double backing)
    {
        RoomLux = Bounds.Within(roomLux, 0, 200_000);
        LampCdPerM2 = Bounds.Within(lampCdPerM2, 0, 1_000_000);
        Backing = Bounds.Within(backing, 0, 0.99);
        if (roomLux + lampCdPerM2 <= 0)
            throw new ArgumentOutOfRangeException(nameof(roomLux), roomLux, "Scene: wanted room light or a lamp.");
        (Room, Lamp) = (room, lamp);
    }

    /// <summary>Room light on the piece, lux.</summary>
    public double RoomLux { get; }

    /// <summary>Spectrum of the room light.</summary>
    public Illuminant Room { get; }

    /// <summary>Luminance of the lit diffuser, cd/m²; 0 when the lamp is off.</summary>
    public double LampCdPerM2 { get; }

    /// <summary>Spectrum of the lamp.</summary>
    public Illuminant Lamp { get; }

    /// <summary>Reflectance of what stands behind the piece.</summary>
    public double Backing { get; }

    /// <summary>By day: the lamp off, the room in D50.</summary>
    /// <param name="roomLux">Room light, lux; it does not change the picture, only its luminance.</param>
    /// <param name="backing">Reflectance of what stands behind.</param>
    public static Scene Day(double roomLux = 500, double backing = 0.8) => new(roomLux, Illuminant.D50, 0, Illuminant.LedB4, backing);

    /// <summary>Lit: the room dim, a white LED lamp behind.</summary>
    /// <param name="roomLux">Room light, lux.</param>
    /// <param name="lampCdPerM2">Luminance of the lit diffuser, cd/m².</param>
    public static Scene Lit(double roomLux = 20, double lampCdPerM2 = 3000) => new(roomLux, Illuminant.D50, lampCdPerM2, Illuminant.LedB4, 0.8);
}
