using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Colour.Readings;

/// <summary>The colour of a reading as it is reported: D50, 2° observer, against the perfect diffuser [ISO13655].</summary>
public static class ReadingColour
{
    /// <summary>The weights asked for most; any others are made when they are asked for.</summary>
    private static readonly SpectralWeights Usual = SpectralWeights.For(Illuminant.D50);

    /// <summary>White of reported Lab: the perfect diffuser under D50; Y = 100.</summary>
    public static Xyz White => Usual.White;

    /// <summary>Whether bands reach far enough for a colour: at least 400 nm to 700 nm, every 1 nm to 20 nm.</summary>
    /// <param name="firstNm">First band, nm.</param>
    /// <param name="stepNm">Width of a band, nm.</param>
    /// <param name="count">Number of bands.</param>
    public static bool Covers(int firstNm, int stepNm, int count) =>
        stepNm is >= 1 and <= 20 && firstNm is >= 200 and <= 400 && firstNm + ((long)stepNm * (count - 1)) is >= 700 and <= 2500;

    /// <summary>Tristimulus values of a spectrum in any even bands; the perfect diffuser has Y = 100.</summary>
    /// <exception cref="ArgumentException">The bands do not reach from 400 nm to 700 nm or are wider than 20 nm.</exception>
    public static Xyz XyzOf(Spectrum spectrum)
    {
        if (!Covers(spectrum.FirstNm, spectrum.StepNm, spectrum.Values.Count))
            throw new ArgumentException(
                Invariant($"Spectrum {spectrum.FirstNm} nm to {spectrum.LastNm} nm every {spectrum.StepNm} nm: wanted 400 nm to 700 nm, every 1 nm to 20 nm."),
                nameof(spectrum));

        SpectralWeights weights = WeightsFor(spectrum.FirstNm, spectrum.StepNm, spectrum.Values.Count);
        return weights.Of(spectrum.Values as double[] ?? [.. spectrum.Values]);
    }

    /// <summary>The weights for even bands under D50 and 2°, to be asked for once where many spectra have the same bands.</summary>
    /// <param name="firstNm">First band, nm.</param>
    /// <param name="stepNm">Width of a band, nm.</param>
    /// <param name="count">Number of bands.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bands do not reach from 400 nm to 700 nm or are wider than 20 nm.</exception>
    public static SpectralWeights WeightsFor(int firstNm, int stepNm, int count) =>
        firstNm == Usual.FirstNm && stepNm == Usual.StepNm && count == Usual.Count
            ? Usual
            : SpectralWeights.For(Illuminant.D50, ColourMatching.TwoDegree, firstNm, firstNm + (stepNm * (count - 1)), stepNm);

    /// <summary>Lab of a spectrum in any even bands.</summary>
    /// <exception cref="ArgumentException">The bands do not reach from 400 nm to 700 nm or are wider than 20 nm.</exception>
    public static Lab LabOf(Spectrum spectrum) => Lab.From(XyzOf(spectrum), White);
}
