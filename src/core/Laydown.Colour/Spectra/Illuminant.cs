using Laydown.Measures;

namespace Laydown.Colour.Spectra;

/// <summary>A light by its relative spectral power.</summary>
public sealed record Illuminant
{
    private readonly double[] power;

    /// <summary>A light from a table with even steps.</summary>
    /// <param name="name">Name for people.</param>
    /// <param name="startNm">First wavelength, nm.</param>
    /// <param name="stepNm">Step, nm, over 0.</param>
    /// <param name="power">Relative power, none under 0, at least two values.</param>
    /// <param name="heldBeyond">Whether the end values hold outside the table (daylight, lamps with a filament or a gas) or there is no light
    /// (LEDs).</param>
    /// <exception cref="ArgumentException">The table is too short or has a value under 0 or NaN.</exception>
    public Illuminant(string name, int startNm, int stepNm, IReadOnlyList<double> power, bool heldBeyond)
    {
        if (power.Count < 2 || stepNm < 1 || power.Any(p => !(p >= 0)))
            throw new ArgumentException("Illuminant: wanted a step over 0 and at least two values, none under 0.", nameof(power));

        Name = Bounds.Named(name);
        StartNm = startNm;
        StepNm = stepNm;
        HeldBeyond = heldBeyond;
        this.power = [.. power];
    }

    /// <summary>Name for people.</summary>
    public string Name { get; }

    /// <summary>First wavelength of the table, nm.</summary>
    public int StartNm { get; }

    /// <summary>Step of the table, nm.</summary>
    public int StepNm { get; }

    /// <summary>Whether the end values hold outside the table.</summary>
    public bool HeldBeyond { get; }

    /// <summary>CIE D50, the light in which prints are judged.</summary>
    public static Illuminant D50 { get; } = CieTables.Daylight("D50");

    /// <summary>CIE D65, average daylight.</summary>
    public static Illuminant D65 { get; } = CieTables.Daylight("D65");

    /// <summary>CIE A, a filament lamp, by its formula [CIE15].</summary>
    public static Illuminant A { get; } = Filament();

    /// <summary>CIE LED-B3, a white LED at about 4100 K.</summary>
    public static Illuminant LedB3 { get; } = CieTables.Led("LED-B3");

    /// <summary>CIE LED-B4, a white LED at about 5100 K: the usual lamp behind a panel.</summary>
    public static Illuminant LedB4 { get; } = CieTables.Led("LED-B4");

    /// <summary>CIE LED-B5, a white LED at about 6600 K.</summary>
    public static Illuminant LedB5 { get; } = CieTables.Led("LED-B5");

    /// <summary>Relative power at a wavelength, linear between the values of the table.</summary>
    public double At(int nm)
    {
        int endNm = StartNm + (StepNm * (power.Length - 1));
        if (nm < StartNm || nm > endNm)
            return !HeldBeyond ? 0 : nm < StartNm ? power[0] : power[^1];

        int below = Math.Min((nm - StartNm) / StepNm, power.Length - 2);
        double part = (nm - StartNm - (below * StepNm)) / (double)StepNm;
        return power[below] + ((power[below + 1] - power[below]) * part);
    }

    // S(λ) = 100 (560/λ)^5 (exp(1.435e7/(2848·560)) − 1) / (exp(1.435e7/(2848·λ)) − 1).
    private static Illuminant Filament()
    {
        double[] power = new double[830 - 300 + 1];
        for (int i = 0; i < power.Length; i++)
        {
            double nm = 300 + i;
            power[i] = 100 * Math.Pow(560 / nm, 5) * (Math.Exp(1.435e7 / (2848 * 560)) - 1) / (Math.Exp(1.435e7 / (2848 * nm)) - 1);
        }

        return new("A", 300, 1, power, heldBeyond: true);
    }
}
