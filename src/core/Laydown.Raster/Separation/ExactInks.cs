namespace Laydown.Raster.Separation;

/// <summary>The exact way from channels to inks that a link stands for.</summary>
/// <param name="channels">Pixel after pixel, 0 to 1 each.</param>
/// <param name="inks">Takes the inks, pixel after pixel, 0 to 1 each.</param>
public delegate void ExactInks(ReadOnlySpan<double> channels, Span<double> inks);
