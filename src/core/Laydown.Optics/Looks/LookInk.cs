using Laydown.Colour.Inks;
using Laydown.Colour.Spectra;
using Laydown.Measures;

namespace Laydown.Optics.Looks;

/// <summary>One ink of a layer as light meets it: a clear colour that absorbs, a white that scatters, or a colour that does
/// both.</summary>
public sealed record LookInk
{
    private LookInk(double[] density, double[] scatter, double[] absorption, bool isWhite) =>
        (Density, Scatter, Absorption, IsWhite, Scatters) = (density, scatter, absorption, isWhite, scatter.Any(s => s > 0));

    /// <summary>Optical density of the full laydown of this layer by what it absorbs, band by band; all 0 for a white.</summary>
    public IReadOnlyList<double> Density { get; }

    /// <summary>S times thickness of the full laydown, band by band; all 0 for a clear colour.</summary>
    public IReadOnlyList<double> Scatter { get; }

    /// <summary>K times thickness of the full laydown, band by band; all 0 for a clear colour, whose density tells it.</summary>
    public IReadOnlyList<double> Absorption { get; }

    /// <summary>Whether it is a white: a film that grows thinner with its coverage, not a halftone of dots.</summary>
    public bool IsWhite { get; }

    /// <summary>Whether it scatters in any band: a white, or a colour that is not clear.</summary>
    public bool Scatters { get; }

    /// <summary>A clear ink: changes nothing but the surface.</summary>
    public static LookInk Clear { get; } = new(Bands.Flat(0), Bands.Flat(0), Bands.Flat(0), isWhite: false);

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
        return new([.. density.Select(d => d * strength)], Bands.Flat(0), Bands.Flat(0), isWhite: false);
    }

    /// <summary>A colour ink that scatters too: seen over black it is not black.</summary>
    /// <remarks>K·X = ln 10 · density: without scatter it is the clear colour of that density.</remarks>
    /// <param name="density">Density of one solid pass by what it absorbs, band by band.</param>
    /// <param name="scatter">S·X of one solid pass, band by band; all 0 makes a clear colour.</param>
    /// <param name="strength">Strength of the layer, 1 = full laydown, 0 to 4.</param>
    /// <exception cref="ArgumentException">Another number of bands, a value under 0 or over 100, or a strength outside its
    /// range.</exception>
    public static LookInk TurbidColour(IReadOnlyList<double> density, IReadOnlyList<double> scatter, double strength = 1)
    {
        LookInk clear = Colour(density, strength);
        if (scatter.Count != Bands.Count || scatter.Any(s => !(s is >= 0 and <= 100)))
            throw new ArgumentException(Invariant($"Scatter: wanted {Bands.Count} values of S·X from 0 to 100."), nameof(scatter));
        double[] turbid = [.. scatter.Select(s => s * strength)];
        return turbid.Any(s => s > 0)
            ? new([.. clear.Density], turbid, [.. clear.Density.Select(d => d * Math.Log(10))], isWhite: false)
            : clear;
    }

    /// <summary>A white ink, grey in all bands.</summary>
    /// <param name="scatter">S·X of the full laydown: 8 lets about 18 % of a lamp through, 20 about 7 %; over 0 to 100.</param>
    /// <param name="absorptionRatio">K/S; 0.002 stands for a good white (common practice, no source); 0 to 1.</param>
    public static LookInk White(double scatter, double absorptionRatio = 0.002)
    {
        Bounds.Within(scatter, 1e-3, 100);
        Bounds.Within(absorptionRatio, 0, 1);
        return new(Bands.Flat(0), Bands.Flat(scatter), Bands.Flat(scatter * absorptionRatio), isWhite: true);
    }

    /// <summary>A white ink as measured.</summary>
    /// <param name="scatter">S·X of the full laydown, band by band, all over 0.</param>
    /// <param name="absorption">K·X of the full laydown, band by band, none under 0.</param>
    /// <exception cref="ArgumentException">Another number of bands or a value outside its range.</exception>
    public static LookInk White(IReadOnlyList<double> scatter, IReadOnlyList<double> absorption)
    {
        if (scatter.Count != Bands.Count || absorption.Count != Bands.Count || scatter.Any(s => !(s > 0)) || absorption.Any(k => !(k >= 0)))
            throw new ArgumentException(Invariant($"White: wanted {Bands.Count} values, S·X over 0 and K·X not under 0."), nameof(scatter));
        return new(Bands.Flat(0), [.. scatter], [.. absorption], isWhite: true);
    }
}
