namespace Laydown.Intake.Artwork;

/// <summary>A page in grey, for finding bar codes.</summary>
/// <param name="Pixels">Row after row from the top, 0 = black, 255 = white.</param>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
/// <param name="MmAcross">Width of a pixel, mm.</param>
/// <param name="MmDown">Height of a pixel, mm.</param>
internal sealed record GreyPicture(byte[] Pixels, int Width, int Height, double MmAcross, double MmDown)
{
    /// <summary>Whether the pixel is dark; outside the picture is light.</summary>
    public bool IsDark(int x, int y) => x >= 0 && y >= 0 && x < Width && y < Height && Pixels[(y * Width) + x] < 128;
}
