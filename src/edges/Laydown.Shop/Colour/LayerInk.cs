using Laydown.Press.Inks;

namespace Laydown.Shop.Colour;

/// <summary>Ink of one role in one layer of one piece.</summary>
/// <param name="Layer">Layer from 0 in the item's stack.</param>
/// <param name="Role">The ink.</param>
/// <param name="MeanCoverage">Mean laydown over the printed area, 1 = full laydown of one ink everywhere.</param>
/// <param name="MaxTotal">Highest sum of inks of that layer at one pixel, 1 = one full ink.</param>
public sealed record LayerInk(int Layer, InkRole Role, double MeanCoverage, double MaxTotal);
