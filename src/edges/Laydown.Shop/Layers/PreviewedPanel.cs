namespace Laydown.Shop.Layers;

/// <summary>A panel as light, for a screen to blend: seen = room · <see cref="Room"/> + lamp · <see cref="Lamp"/>.</summary>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
/// <param name="Room">Linear red, green, blue of every pixel in a room in which a perfect diffuser is 1.</param>
/// <param name="Lamp">The same for a lamp of that diffuser's luminance.</param>
/// <param name="WhiteStrength">Strength of the white.</param>
/// <param name="LiftPercent">L* that day black becomes.</param>
/// <param name="NightExposure">White of the night picture over the light of the bare panel.</param>
/// <param name="Milliseconds">How long it took, reading of pictures left out.</param>
public sealed record PreviewedPanel(
    int Width, int Height, float[] Room, float[] Lamp, double WhiteStrength, double LiftPercent, double NightExposure, double Milliseconds);
