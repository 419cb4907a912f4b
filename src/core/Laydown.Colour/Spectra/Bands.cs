namespace Laydown.Colour.Spectra;

/// <summary>The bands in which the product keeps spectra: 380 nm to 730 nm every 10 nm, as hand-held instruments report them.</summary>
public static class Bands
{
    /// <summary>Number of bands.</summary>
    public const int Count = 36;

    /// <summary>First band, nm.</summary>
    public const int FirstNm = 380;

    /// <summary>Last band, nm.</summary>
    public const int LastNm = 730;

    /// <summary>Width of a band, nm.</summary>
    public const int StepNm = 10;

    /// <summary>Wavelength of a band, nm.</summary>
    /// <param name="band">0 to 35.</param>
    public static int Nm(int band) => FirstNm + (StepNm * band);

    /// <summary>A spectrum that is the same in all bands.</summary>
    public static double[] Flat(double value)
    {
        double[] flat = new double[Count];
        Array.Fill(flat, value);
        return flat;
    }
}
