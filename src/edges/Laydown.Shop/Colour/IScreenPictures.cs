using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Reads and writes pictures for the screen.</summary>
public interface IScreenPictures
{
    /// <summary>A PNG that the product wrote itself, scaled down so that no side is over <paramref name="maxSidePx"/>; transparency over white.</summary>
    Reading<RgbPicture> Read(string pngPath, int maxSidePx);

    /// <summary>Bytes of a PNG.</summary>
    byte[] Png(RgbPicture picture);
}
