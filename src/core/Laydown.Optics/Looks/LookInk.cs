using Laydown.Colour.Inks;
using Laydown.Colour.Spectra;
using Laydown.Measures;

namespace Laydown.Optics.Looks;

/// <summary>One ink of a layer as light meets it: a clear colour that absorbs, or a white that scatters.</summary>
public sealed record LookInk
{
    private LookInk(double[] density, double[] scatter, double[] absorption) => (Density, Scatter, Absorption) = (density, scatter, absorption);

    /// <summary>Optical density of the full laydown of this layer, band by band; all 0 for a white.</summary>
    public IReadOnlyList<double> Density { get; }

    /// <summary>S times thickness of the full laydown, band by band; all 0 for a colour.</summary>
    public IReadOnlyList<double> Scatter { get; }

    /// <summary>K times thickness of the full laydown, band by band; all 0 for a colour.</summary>
    public IReadOnlyList<double> Absorption { get; }

    /// <summary>Whether it scatters.</summary>
    public bool IsWhite => Scatter[0] > 0;

    /// <summary>A clear ink: changes nothing but the surface.</summary>
    public static LookInk Clear { get; } = new(Bands.Flat(0), Bands.Flat(0), Bands.Flat(0));

    /// <summary>A colour ink.</summary>
    /// <param name="density">Density of one solid pass, band by band, such as
    /// <see cref="GenericUvInks.Density(ProcessInk, double)"/>.</param>
    /// <param name="strength">Strength of the layer, 1 = full laydown, 0 to 4.</param>
    /// <exception cref="ArgumentException">Another number of bands, a density under 0, or a strength outside its range.</exception>
    public static LookInk Colour(IReadOnlyList<double> density, double strength = 1)
    {
        Bounds.Within(strength, 0, 4);
        if (density.Count != Bands.Count || density.Any(d => !(d >= 0)))
            throw new ArgumentException(Invariant($"Density: wanted {Bands.Count} values, none under 0."), nameof(density));
        return new([.. density.Select(d => d * strength)], Bands.Flat(0), Bands.Flat(0));
    }

    /// <summary>A white ink, grey in all bands.</summary>
    /// <param name="scatter">S·X of the full laydown: 8 lets about 18 % of a lamp through, 20 about 7 %; over 0 to 100.</param>
    /// <param name="absorptionRatio">K/S; 0.002 stands for a good white (common practice, no source); 0 to 1.</param>
    public static LookInk White(double scatter, double absorptionRatio = 0.002)
    {
        Bounds.Within(scatter, 1e-3, 100);
        Bounds.Within(absorptionRatio, 0, 1);
        return new(Bands.Flat(0), Bands.Flat(scatter), Bands.Flat(scatter * absorptionRatio));
    }

    /// <summary>A white ink as measured.</summary>
    /// <param name="scatter">S·X of the full laydown, band by band, all over 0.</param>
    /// <param name="absorption">K·X of the full laydown, band by band, none under 0.</param>
    /// <exception cref="ArgumentException">Another number of bands or a value outside its range.</exception>
    public static LookInk White(IReadOnlyList<double> scatter, IReadOnlyList<double> absorption)
    {
        if (scatter.Count != Bands.Count || absorption.Count != Bands.Count || scatter.Any(s => !(s > 0)) || absorption.Any(k => !(k >= 0)))
            throw new ArgumentException(Invariant($"White: wanted {Bands.Count} values, S·X over 0 and K·X not under 0."), nameof(scatter));
        return new(Bands.Flat(0), [.. scatter], [.. absorption]);
    }
}
