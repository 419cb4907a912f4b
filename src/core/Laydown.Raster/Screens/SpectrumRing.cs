namespace Laydown.Raster.Screens;

/// <summary>A ring of one frequency in the spectrum of dots.</summary>
/// <param name="Frequency">Its middle, cycles for each px.</param>
/// <param name="Samples">Frequencies of the transform that fall into it.</param>
/// <param name="Power">Mean power, where white noise of the same tone has 1.</param>
/// <param name="AnisotropyDb">How unequal the power is around the ring: variance ÷ mean², dB. Noise without a direction has −10 log₁₀ of
/// the number of pictures averaged.</param>
internal sealed record SpectrumRing(double Frequency, int Samples, double Power, double AnisotropyDb);
