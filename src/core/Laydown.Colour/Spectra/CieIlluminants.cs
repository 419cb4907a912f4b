namespace Laydown.Colour.Spectra;

/// <summary>The CIE illuminants that the product knows by name [CIE15].</summary>
public static class CieIlluminants
{
    /// <summary>All of them: A, C, daylight D50 to D75, fluorescent lamps, LEDs.</summary>
    public static IReadOnlyList<Illuminant> All { get; } =
    [
        Illuminant.A, CieTables.Daylight("C"), Illuminant.D50, CieTables.Daylight("D55"), Illuminant.D65, CieTables.Daylight("D75"),
        .. ((string[])["FL1", "FL2", "FL4", "FL7", "FL8", "FL11", "FL12", "FL3.4", "FL3.12"]).Select(CieTables.Fluorescent),
        CieTables.Led("LED-B1"), CieTables.Led("LED-B2"), Illuminant.LedB3, Illuminant.LedB4, Illuminant.LedB5,
        .. ((string[])["LED-BH1", "LED-RGB1", "LED-V1", "LED-V2"]).Select(CieTables.Led),
    ];

    /// <summary>The illuminant of a name such as D50, FL11 or LED-B4, in any case of letters; null for a name that is not known.</summary>
    public static Illuminant? Named(string name) => All.FirstOrDefault(i => i.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
}
