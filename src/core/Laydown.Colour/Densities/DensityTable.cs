using Laydown.Colour.Readings;
using Laydown.Measures;

namespace Laydown.Colour.Densities;

/// <summary>Spectral weights of a status density, as the shop has them from its own copy of the standard.</summary>
public sealed record DensityTable
{
    private readonly double[][] weights;

    /// <summary>A table with even steps.</summary>
    /// <param name="name">Name, such as Status T.</param>
    /// <param name="firstNm">First wavelength, nm.</param>
    /// <param name="stepNm">Step, nm, over 0.</param>
    /// <param name="channels">Names of the channels, such as Visual, Red, Green, Blue.</param>
    /// <param name="weights">Weights: channels × wavelengths, any scale, none under 0; each channel has one over 0.</param>
    /// <exception cref="ArgumentException">The table has another shape or a weight under 0.</exception>
    public DensityTable(string name, int firstNm, int stepNm, IReadOnlyList<string> channels, IReadOnlyList<IReadOnlyList<double>> weights)
    {
        if (stepNm < 1 || channels.Count == 0 || weights.Count != channels.Count || weights.Any(w => w.Count < 2 || w.Count != weights[0].Count))
            throw new ArgumentException("Density table: wanted a step over 0 and one row of weights for each channel, all of one length.", nameof(weights));
        if (weights.Any(w => w.Any(v => !(v >= 0 && double.IsFinite(v))) || w.Sum() == 0))
            throw new ArgumentException("Density table: wanted weights of 0 or more, in each channel one over 0.", nameof(weights));

        Name = Bounds.Named(name);
        (FirstNm, StepNm, Channels) = (firstNm, stepNm, channels);
        this.weights = [.. weights.Select(w => w.ToArray())];
    }

    /// <summary>Name.</summary>
    public string Name { get; }

    /// <summary>First wavelength, nm.</summary>
    public int FirstNm { get; }

    /// <summary>Step, nm.</summary>
    public int StepNm { get; }

    /// <summary>Names of the channels.</summary>
    public IReadOnlyList<string> Channels { get; }

    /// <summary>Density in a channel against the perfect diffuser; at most 6.</summary>
    /// <remarks>The spectrum is taken linear between its bands and held beyond its ends.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">There is no such channel.</exception>
    /// <exception cref="ArgumentException">The spectrum has no band.</exception>
    public double Of(Spectrum spectrum, int channel)
    {
        _ = Bounds.Within(channel, 0, Channels.Count - 1);
        _ = Bounds.NotEmpty(spectrum.Values);
        double seen = 0, whole = 0;
        for (int i = 0; i < weights[channel].Length; i++)
        {
            seen += weights[channel][i] * At(spectrum, FirstNm + (StepNm * i));
            whole += weights[channel][i];
        }

        return VisualDensity.FromFactor(seen / whole);
    }

    private static double At(Spectrum spectrum, int nm)
    {
        double place = Math.Clamp((nm - spectrum.FirstNm) / (double)spectrum.StepNm, 0, spectrum.Values.Count - 1);
        int below = Math.Min((int)place, Math.Max(0, spectrum.Values.Count - 2));
        int above = Math.Min(below + 1, spectrum.Values.Count - 1);
        return spectrum.Values[below] + ((spectrum.Values[above] - spectrum.Values[below]) * (place - below));
    }
}
