namespace Laydown.Colour.Spectra;

/// <summary>Colour-matching functions of an observer at every nanometre.</summary>
public sealed class ColourMatching
{
    private readonly double[][] xyz;

    /// <summary>An observer from its table.</summary>
    /// <param name="firstNm">First wavelength, nm.</param>
    /// <param name="xyz">For every nanometre the three values x̄, ȳ, z̄.</param>
    /// <exception cref="ArgumentException">The table is empty or a row has not three values.</exception>
    public ColourMatching(int firstNm, IReadOnlyList<double[]> xyz)
    {
        if (xyz.Count == 0 || xyz.Any(r => r.Length != 3))
            throw new ArgumentException("Colour matching: wanted three values for every nanometre.", nameof(xyz));

        FirstNm = firstNm;
        this.xyz = [.. xyz];
    }

    /// <summary>The CIE 1931 observer, 2° [CIE15].</summary>
    public static ColourMatching TwoDegree { get; } = CieTables.TwoDegreeObserver();

    /// <summary>The CIE 1964 observer, 10° [CIE15].</summary>
    public static ColourMatching TenDegree { get; } = CieTables.TenDegreeObserver();

    /// <summary>First wavelength, nm.</summary>
    public int FirstNm { get; }

    /// <summary>Last wavelength, nm.</summary>
    public int LastNm => FirstNm + xyz.Length - 1;

    /// <summary>x̄, ȳ, z̄ at a wavelength of the table.</summary>
    public ReadOnlySpan<double> At(int nm) => xyz[nm - FirstNm];
}
