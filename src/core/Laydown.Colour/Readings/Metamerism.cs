using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Colour.Readings;

/// <summary>How far two samples that match in one light part in another: the special index of metamerism [CIE15], in ΔE00.</summary>
public static class Metamerism
{
    /// <summary>ΔE00 of the pair in the other light; 0 for equal spectra.</summary>
    /// <remarks>What does not match in the first light is taken out: each tristimulus value of the sample in the other light is multiplied
    /// by the ratio of standard to sample in the first.</remarks>
    /// <param name="standard">The standard.</param>
    /// <param name="sample">The sample, in the same bands.</param>
    /// <param name="matchedIn">Light in which the two match, or nearly.</param>
    /// <param name="seenIn">The other light.</param>
    /// <param name="observer">Observer.</param>
    /// <exception cref="ArgumentException">The bands differ, do not reach from 400 nm to 700 nm, or the sample is black in a channel.</exception>
    public static double Index(Spectrum standard, Spectrum sample, Illuminant matchedIn, Illuminant seenIn, ColourMatching observer)
    {
        if (standard.FirstNm != sample.FirstNm || standard.StepNm != sample.StepNm || standard.Values.Count != sample.Values.Count)
            throw new ArgumentException(Invariant($"Bands from {sample.FirstNm} nm: wanted those of the standard, from {standard.FirstNm} nm."), nameof(sample));

        SpectralWeights first = SpectralWeights.For(matchedIn, observer, standard.FirstNm, standard.LastNm, standard.StepNm);
        SpectralWeights other = SpectralWeights.For(seenIn, observer, standard.FirstNm, standard.LastNm, standard.StepNm);
        double[] one = [.. standard.Values], two = [.. sample.Values];
        Xyz oneFirst = first.Of(one), twoFirst = first.Of(two), twoOther = other.Of(two);
        if (!(twoFirst.X > 0 && twoFirst.Y > 0 && twoFirst.Z > 0))
            throw new ArgumentException(Invariant($"Sample {twoFirst}: wanted tristimulus values over 0."), nameof(sample));

        Xyz corrected = new(
            twoOther.X * oneFirst.X / twoFirst.X, twoOther.Y * oneFirst.Y / twoFirst.Y, twoOther.Z * oneFirst.Z / twoFirst.Z);
        return Ciede2000.Between(Lab.From(other.Of(one), other.White), Lab.From(corrected, other.White));
    }
}
