using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>What the shop can do to look at made sheets.</summary>
/// <param name="Open">Opens one.</param>
/// <param name="Draw">Draws parts.</param>
/// <param name="Read">Tells what is at a place.</param>
/// <param name="Crop">Cuts parts out.</param>
public sealed record SheetServices(OpenSheet Open, DrawSheet Draw, ReadSheet Read, CropSheet Crop)
{
    /// <summary>All of it for one shop.</summary>
    /// <param name="folder">The shop's folder.</param>
    /// <param name="catalogue">What the shop has.</param>
    /// <param name="store">What it remembers.</param>
    /// <param name="planes">Reads press files.</param>
    /// <param name="pictures">Writes PNG.</param>
    public static SheetServices Of(ShopFolder folder, Catalogue catalogue, IShopStore store, IPressPlanes planes, ILookPictures pictures)
    {
        DrawSheet draw = new(planes, pictures);
        return new(new(folder, catalogue, store, planes), draw, new(planes, draw), new(planes, draw));
    }
}
