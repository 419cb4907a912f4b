namespace Laydown.Colour.Readings;

/// <summary>Reflectance or transmittance in even bands, as an instrument gave it.</summary>
/// <param name="FirstNm">First band, nm.</param>
/// <param name="StepNm">Width of a band, nm, over 0.</param>
/// <param name="Values">Factor for each band: 0 none, 1 the perfect diffuser; over 1 where a sheet fluoresces.</param>
public sealed record Spectrum(int FirstNm, int StepNm, IReadOnlyList<double> Values)
{
    /// <summary>Last band, nm.</summary>
    public int LastNm => FirstNm + (StepNm * (Values.Count - 1));
}
