namespace Laydown.Raster.Passes;

/// <summary>One ink as the forecast of bands needs it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Layer">Layer from 0 in the order of laying down.</param>
/// <param name="Red">Light of the red third that comes back through one full laydown, as a share of the bare sheet's, linear, over 0;
/// over 1 for a white on a darker sheet.</param>
/// <param name="Green">The same of the green third.</param>
/// <param name="Blue">The same of the blue third.</param>
/// <param name="Flaws">Flaws of its channel's nozzles.</param>
public sealed record BandInk(string Name, int Layer, double Red, double Green, double Blue, NozzleFlaws Flaws)
{
    /// <summary>Share of the luminance, by the weights of the primaries of screens [BT709].</summary>
    public double Luminance => (0.2126 * Red) + (0.7152 * Green) + (0.0722 * Blue);
}
