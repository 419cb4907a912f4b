using Laydown.Colour.Spectra;

namespace Laydown.Colour.Inks;

/// <summary>A generic class of UV-LED inks. Synthetic: no measured ink stands behind it; it serves until a shop has measured its
/// own.</summary>
/// <remarks>Source and tuning stand in Data/README.md.</remarks>
public static class GenericUvInks
{
    private static readonly string[] Columns = ["C", "M", "Y", "K", "Lc", "Lm"];
    private static readonly double[][] Densities = [.. Columns.Select(c => CieTables.Column("generic-uv-inks-density.csv", c))];

    /// <summary>Always true: these inks are synthetic, and whatever rests on them says so.</summary>
    public static bool Synthetic => true;

    /// <summary>Optical density (−log10 of transmittance) of one solid pass, band by band, 380–730 nm.</summary>
    public static double[] Density(ProcessInk ink) => [.. Densities[(int)ink]];

    /// <summary>The ink's spectrum at another strength: its highest band has the given density.</summary>
    /// <param name="ink">Which ink.</param>
    /// <param name="peakDensity">Density of one solid pass at its main band, 0 to 4.</param>
    /// <exception cref="ArgumentOutOfRangeException">The density is NaN or outside 0 to 4.</exception>
    public static double[] Density(ProcessInk ink, double peakDensity)
    {
        if (!(peakDensity is >= 0 and <= 4))
            throw new ArgumentOutOfRangeException(nameof(peakDensity), peakDensity, "Solid density: wanted 0 to 4.");

        double[] density = Density(ink);
        double scale = peakDensity / density.Max();
        for (int band = 0; band < Bands.Count; band++)
            density[band] *= scale;
        return density;
    }
}
