namespace Laydown.Shop.Colour;

/// <summary>A picture for the screen.</summary>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
/// <param name="Pixels">sRGB, three bytes a pixel, row after row from the top.</param>
public sealed record RgbPicture(int Width, int Height, byte[] Pixels);
