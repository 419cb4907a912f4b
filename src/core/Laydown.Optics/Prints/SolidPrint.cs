using Laydown.Colour.Spectra;
using Laydown.Optics.Layers;

namespace Laydown.Optics.Prints;

/// <summary>Reflectance of solid clear inks on a diffusing stock, lit at 45° and seen straight on, gloss left out.</summary>
/// <remarks>R = T_in T_out t² ρ / (1 − r_i t² ρ): the ink is crossed inward and outward, and again at each reflection inside
/// [Williams1953].</remarks>
public static class SolidPrint
{
    /// <summary>All overprints of a set of inks; bit i of the index tells whether ink i lies there.</summary>
    /// <param name="stock">Reflectance of the stock's inside, without its surface, band by band, 0 to 1.</param>
    /// <param name="densities">Density of one solid pass of each ink, band by band.</param>
    /// <param name="surface">The surface.</param>
    /// <exception cref="ArgumentException">A spectrum has another number of bands.</exception>
    public static double[][] Overprints(IReadOnlyList<double> stock, IReadOnlyList<double[]> densities, Boundary surface)
    {
        if (stock.Count != Bands.Count || densities.Any(d => d.Length != Bands.Count))
            throw new ArgumentException(Invariant($"Spectra: wanted {Bands.Count} bands."), nameof(stock));

        double[][] overprints = new double[1 << densities.Count][];
        for (int inks = 0; inks < overprints.Length; inks++)
        {
            double[] reflectance = new double[Bands.Count];
            for (int band = 0; band < Bands.Count; band++)
            {
                double density = 0;
                for (int ink = 0; ink < densities.Count; ink++)
                    density += (inks >> ink & 1) * densities[ink][band];
                reflectance[band] = Seen(stock[band], Math.Pow(10, -density), surface);
            }

            overprints[inks] = reflectance;
        }

        return overprints;
    }

    /// <summary>Reflectance of one band at 45:0 over a stock under an ink of one-way transmittance <paramref name="ink"/>.</summary>
    public static double Seen(double stock, double ink, Boundary surface) =>
        surface.InFrom45 * surface.OutNormal * ink * ink * stock / (1 - (surface.DiffuseInside * ink * ink * stock));

    /// <summary>The inside of a bare stock from its reflectance at 45:0: the formula above turned round for t = 1.</summary>
    /// <param name="seen">Reflectance at 45:0, 0 to 1.</param>
    /// <param name="surface">The surface.</param>
    /// <returns>0 to 1; 1 where the stock is whiter than the surface lets it look.</returns>
    public static double Inside(double seen, Boundary surface) =>
        Math.Min(1, seen / ((surface.InFrom45 * surface.OutNormal) + (surface.DiffuseInside * seen)));
}
