using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Layers;

namespace Laydown.Optics.Fits;

/// <summary>How well a white hides what is under it, and how much light of a lamp it lets through.</summary>
public static class Hiding
{
    /// <summary>Reflectance of the lighter base of the contrast ratio.</summary>
    public const double LighterBase = 0.8;

    private static readonly SpectralWeights Weights = SpectralWeights.For(Illuminant.D50);

    /// <summary>Contrast ratio: luminous reflectance at 45:0 over a black base by that over a base of 0.8, both in optical contact.</summary>
    /// <param name="absorption">K·X of one full laydown, 36 bands.</param>
    /// <param name="scatter">S·X of one full laydown, 36 bands.</param>
    /// <param name="laydowns">How many full laydowns lie there, over 0 to 20.</param>
    /// <returns>0 hides nothing, 1 hides all.</returns>
    /// <exception cref="ArgumentException">Another number of bands, or a value outside its range.</exception>
    public static double ContrastRatio(IReadOnlyList<double> absorption, IReadOnlyList<double> scatter, double laydowns) =>
        Luminous(absorption, scatter, laydowns, l => Saunderson.SeenAt45(l.FrontReflectance, Boundary.Ink))
        / Luminous(absorption, scatter, laydowns, l => Saunderson.SeenAt45(Over(l), Boundary.Ink));

    /// <summary>Luminous transmittance of the free film with a face to air on each side, lit by diffuse light and seen straight on.</summary>
    /// <inheritdoc cref="ContrastRatio"/>
    public static double Transmittance(IReadOnlyList<double> absorption, IReadOnlyList<double> scatter, double laydowns)
    {
        Boundary surface = Boundary.Ink;
        return Luminous(absorption, scatter, laydowns, l =>
        {
            double loop = Math.Pow(1 - (surface.DiffuseInside * l.FrontReflectance), 2) - Math.Pow(surface.DiffuseInside * l.Inward, 2);
            return surface.InDiffuse * surface.OutNormal * l.Inward / loop;
        });
    }

    private static double Over(LayerLight film) =>
        film.FrontReflectance + (film.Inward * film.Outward * LighterBase / (1 - (film.BackReflectance * LighterBase)));

    private static double Luminous(IReadOnlyList<double> absorption, IReadOnlyList<double> scatter, double laydowns, Func<LayerLight, double> seen)
    {
        Bounds.Within(laydowns, 1e-6, 20);
        if (absorption.Count != Bands.Count || scatter.Count != Bands.Count)
            throw new ArgumentException(Invariant($"Found {absorption.Count} and {scatter.Count} values; wanted {Bands.Count} each."), nameof(scatter));
        double[] values = new double[Bands.Count];
        for (int band = 0; band < values.Length; band++)
            values[band] = seen(KubelkaMunk.Layer(absorption[band] * laydowns, scatter[band] * laydowns));
        return Weights.Of(values).Y / Weights.White.Y;
    }
}
