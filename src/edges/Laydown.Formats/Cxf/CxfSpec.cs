using System.Text.RegularExpressions;
using System.Xml.Linq;
using static Laydown.Formats.Cxf.CxfNames;

namespace Laydown.Formats.Cxf;

/// <summary>What a colour specification of CxF3 says of the light, the observer and the bands.</summary>
/// <param name="Illuminant">Illuminant of colours, or empty.</param>
/// <param name="Observer">Observer of colours, or empty.</param>
/// <param name="Start">First band as text, or empty.</param>
/// <param name="Increment">Step of the bands as text, or empty.</param>
/// <param name="Condition">M0 to M3, or empty.</param>
/// <param name="Instrument">Maker and model of the instrument, or empty.</param>
/// <param name="Backing">Backing, or empty (from memory).</param>
internal sealed partial record CxfSpec(string Illuminant, string Observer, string Start, string Increment, string Condition, string Instrument, string Backing)
{
    /// <summary>A specification that says nothing.</summary>
    public static CxfSpec None { get; } = new("", "", "", "", "", "", "");

    /// <summary>Reads a specification.</summary>
    public static CxfSpec Of(XElement element)
    {
        string Text(string name) => element.Descendants(Core + name).FirstOrDefault()?.Value.Trim() ?? "";
        XElement? bands = element.Descendants(Core + "WavelengthRange").FirstOrDefault();
        return new(
            Text("Illuminant"), Text("Observer"), (string?)bands?.Attribute("StartWL") ?? "", (string?)bands?.Attribute("Increment") ?? "",
            ConditionWord().Match(Text("DeviceIllumination") + ' ' + (string?)element.Attribute("Id")).Value,
            (Text("Manufacturer") + ' ' + Text("Model")).Trim(), Text("Backing"));
    }

    /// <summary>What keeps colours under this specification out, or null: another light than D50, another observer than 2°.</summary>
    public string? Unfit() =>
        Illuminant.Length > 0 && !Illuminant.Contains("D50", StringComparison.OrdinalIgnoreCase) ? "illuminant " + Illuminant
        : Observer.Contains("10", StringComparison.Ordinal) ? "observer " + Observer
        : null;

    [GeneratedRegex("(?<![A-Za-z0-9])M[0-3](?![A-Za-z0-9])|(?<=_)M[0-3](?=_)|^M[0-3](?=_)", RegexOptions.CultureInvariant)]
    private static partial Regex ConditionWord();
}
