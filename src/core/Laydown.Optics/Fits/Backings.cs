using Laydown.Colour.Spectra;

namespace Laydown.Optics.Fits;

/// <summary>The backings that reflectance was read over: part of every reading of a sheet that light gets through.</summary>
/// <param name="Black">Reflectance of the black backing alone, band by band, 0 to 0.99.</param>
/// <param name="White">Reflectance of the white backing alone, band by band, 0 to 0.99.</param>
public sealed record Backings(IReadOnlyList<double> Black, IReadOnlyList<double> White)
{
    /// <summary>Backings that nobody read: black 0.04, white 0.85 in all bands (common practice, no source).</summary>
    public static Backings Usual { get; } = new(Bands.Flat(0.04), Bands.Flat(0.85));
}
