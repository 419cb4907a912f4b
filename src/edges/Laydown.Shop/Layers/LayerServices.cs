using Laydown.Shop.Colour;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>What the shop can do with layers and looks.</summary>
/// <param name="Shelf">Where looks lie.</param>
/// <param name="ListLooks">Lists the looks of an item.</param>
/// <param name="ShowLook">Shows one.</param>
/// <param name="ChooseLook">Chooses the look an item is printed from.</param>
/// <param name="LookLights">From a look to the model of light.</param>
/// <param name="SeparateLook">Makes a look from an item's pages.</param>
/// <param name="SolvePanel">Makes a look from two pictures.</param>
/// <param name="SolveWaiting">Solves the panels that wait.</param>
/// <param name="ComputeLook">What is seen of mixtures on a stack.</param>
public sealed record LayerServices(
    LookShelf Shelf,
    ListLooks ListLooks,
    ShowLook ShowLook,
    ChooseLook ChooseLook,
    LookLights LookLights,
    SeparateLook SeparateLook,
    SolvePanel SolvePanel,
    SolveWaiting SolveWaiting,
    ComputeLook ComputeLook)
{
    /// <summary>All of it for one shop.</summary>
    /// <param name="shelf">Where looks lie.</param>
    /// <param name="catalogue">What the shop has.</param>
    /// <param name="store">Its items.</param>
    /// <param name="planes">Separates items.</param>
    /// <param name="pairs">Reads pairs of pictures.</param>
    /// <param name="pictures">Writes pictures.</param>
    /// <param name="files">Reads lists of numbers.</param>
    /// <param name="clock">Tells the time.</param>
    public static LayerServices Of(
        LookShelf shelf, Catalogue catalogue, IShopStore store, IItemPlanes planes, IPairPictures pairs, ILookPictures pictures, IColourFiles files,
        TimeProvider clock)
    {
        SolvePanel solve = new(catalogue, store, shelf, pairs, pictures, clock);
        ChooseLook choose = new(store, shelf);
        return new(
            shelf, new(shelf), new(shelf), choose, new(catalogue), new(catalogue, store, shelf, planes, pictures, clock), solve,
            new(catalogue, store, shelf, solve, choose), new(catalogue, store, files));
    }
}
