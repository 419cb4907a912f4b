using Laydown.Measures;
using Laydown.Shop.Colour;

namespace Laydown.Shop.Layers;

/// <summary>Writes the pictures of a look as PNG that say which colours they are in.</summary>
public interface ILookPictures
{
    /// <summary>Bytes of a PNG tagged as sRGB.</summary>
    byte[] Png(RgbPicture picture);

    /// <summary>Bytes of a PNG in another RGB profile, which it carries; or why the profile cannot be taken.</summary>
    /// <param name="width">Pixels across.</param>
    /// <param name="lab">L*, a*, b* (D50) of every pixel, row after row.</param>
    /// <param name="profileName">Name for faults.</param>
    /// <param name="profile">The profile's bytes.</param>
    Reading<byte[]> PngIn(int width, IReadOnlyList<double> lab, string profileName, byte[] profile);

    /// <summary>Bytes of a PNG of a map with its legend below.</summary>
    byte[] Map(RgbPicture picture, string title, IReadOnlyList<MapKey> keys);
}
