using System.Xml.Linq;

namespace Laydown.Formats.Cxf;

/// <summary>Names of CxF3 [ISO17972-1], as in a public file of others; those marked so from memory.</summary>
internal static class CxfNames
{
    /// <summary>The namespace of the core, whatever its prefix.</summary>
    public static readonly XNamespace Core = "http://colorexchangeformat.com/CxF3-core";

    /// <summary>The four process inks as their elements are called.</summary>
    public static readonly IReadOnlyList<string> Process = ["Cyan", "Magenta", "Yellow", "Black"];

    /// <summary>Deepest nesting taken.</summary>
    public const int Depth = 32;

    /// <summary>How the light of the instrument is called for a measurement condition; M0, M2 and M3 from memory.</summary>
    public static string Illumination(string condition) => condition switch
    {
        "M0" => "M0_Incandescent",
        "M1" => "M1_Daylight",
        "M2" => "M2_UVExcluded",
        "M3" => "M3_Polarized",
        _ => "",
    };
}
