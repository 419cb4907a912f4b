using Laydown.Measures;
using Laydown.Press.Conditions;

namespace Laydown.Shop.Colour;

/// <summary>Lists the shop's named colours.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads.</param>
public sealed class ListNamedColours(ShopFolder folder, IColourFiles files)
{
    /// <summary>The library, or why it cannot be read.</summary>
    public Reading<ColourLibrary> List() => files.Library(folder.NamedColours);
}
