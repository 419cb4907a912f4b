namespace Laydown.Raster.Screens;

/// <summary>What the screens want to know of an ink.</summary>
/// <param name="Role">Its name in the layer, such as <c>cyan</c>.</param>
/// <param name="Darkness">How much it darkens paper, 0 (as clear) to 1 (as black): the darkest get the quietest dots.</param>
/// <param name="LightOf">Place in the layer of the dark ink of the same hue, or null where it is no light ink.</param>
public sealed record ScreenInk(string Role, double Darkness, int? LightOf);
