using Laydown.Colour.Readings;

namespace Laydown.Press.Conditions;

/// <summary>A reflectance spectrum as files of people hold it.</summary>
/// <param name="FirstNm">First band, nm, at most 400.</param>
/// <param name="StepNm">Width of a band, nm.</param>
/// <param name="Values">Reflectance for each band, 0 to 2, up to at least 700 nm.</param>
public sealed record LibrarySpectrum(int FirstNm, int StepNm, IReadOnlyList<double> Values)
{
    /// <summary>The same for computing.</summary>
    public Spectrum ToSpectrum() => new(FirstNm, StepNm, Values);
}
