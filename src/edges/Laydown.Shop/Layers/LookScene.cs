using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;

namespace Laydown.Shop.Layers;

/// <summary>The light of a look as it is kept: lights by their names.</summary>
/// <param name="RoomLux">Room light, lux.</param>
/// <param name="Room">Name of its spectrum: D50, D65, A, LED-B3, LED-B4, LED-B5.</param>
/// <param name="LampCdPerM2">Luminance of the lit diffuser behind the piece, cd/m²; 0 when the lamp is off.</param>
/// <param name="Lamp">Name of the lamp's spectrum, as above.</param>
/// <param name="Backing">Reflectance of what stands behind the piece, 0 to 0.99.</param>
public sealed record LookScene(double RoomLux, string Room, double LampCdPerM2, string Lamp, double Backing)
{
    private static readonly Illuminant[] Known =
        [Illuminant.D50, Illuminant.D65, Illuminant.A, Illuminant.LedB3, Illuminant.LedB4, Illuminant.LedB5];

    /// <summary>Names that can be taken.</summary>
    public static IReadOnlyList<string> Lights { get; } = [.. Known.Select(k => k.Name)];

    /// <summary>The scene as kept.</summary>
    public static LookScene Of(Scene scene) => new(scene.RoomLux, scene.Room.Name, scene.LampCdPerM2, scene.Lamp.Name, scene.Backing);

    /// <summary>The light of that name, or null where none is known; case does not matter.</summary>
    public static Illuminant? Find(string name) => Known.FirstOrDefault(k => string.Equals(k.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The scene itself.</summary>
    /// <exception cref="ArgumentException">A light of no known name, or a value outside its range.</exception>
    public Scene Scene() => new(RoomLux, Need(Room), LampCdPerM2, Need(Lamp), Backing);

    private static Illuminant Need(string name) => Find(name)
        ?? throw new ArgumentException(Invariant($"Light: found '{name}'; wanted one of {string.Join(", ", Lights)}."), nameof(name));
}
