using System.Globalization;
using System.Xml.Linq;
using static Laydown.Formats.Cxf.CxfNames;

namespace Laydown.Formats.Cxf;

/// <summary>One object of a CxF3 file: inks asked for, a colour measured, or both.</summary>
internal sealed class CxfObject
{
    private CxfObject(int number, XElement element)
    {
        Number = number;
        Type = (string?)element.Attribute("ObjectType") ?? "";
        string? sample = element.Descendants(Core + "Tag").Where(t => (string?)t.Attribute("Name") == "SampleID").Select(t => (string?)t.Attribute("Value")).FirstOrDefault();
        Key = string.IsNullOrWhiteSpace(sample) ? null : sample.Trim();
        Name = Key ?? (string?)element.Attribute("Name") ?? (string?)element.Attribute("Id") ?? number.ToString(CultureInfo.InvariantCulture);
        XElement? values = element.Element(Core + "ColorValues");
        Spectrum = values?.Element(Core + "ReflectanceSpectrum");
        Labs = [.. values?.Elements(Core + "ColorCIELab") ?? []];
        Xyzs = [.. values?.Elements(Core + "ColorCIEXYZ") ?? []];
        XElement? device = element.Element(Core + "DeviceColorValues");
        OtherDevice = device?.Elements().Select(e => e.Name.LocalName).FirstOrDefault(n => n is not ("ColorCMYK" or "ColorCMYKPlusN"));
        Inks = InksOf(device?.Element(Core + "ColorCMYKPlusN") ?? device?.Element(Core + "ColorCMYK"));
    }

    /// <summary>Number of the object in the file, from 1.</summary>
    public int Number { get; }

    /// <summary>Kind of object, such as Target or M1_Measurement.</summary>
    public string Type { get; }

    /// <summary>Id of the sample that joins a target with its measurement, or null.</summary>
    public string? Key { get; }

    /// <summary>Name of the patch.</summary>
    public string Name { get; }

    /// <summary>The spectrum, or null.</summary>
    public XElement? Spectrum { get; }

    /// <summary>Colours in Lab, one for each light.</summary>
    public IReadOnlyList<XElement> Labs { get; }

    /// <summary>Colours in XYZ, one for each light.</summary>
    public IReadOnlyList<XElement> Xyzs { get; }

    /// <summary>Names and values of the inks, as text; empty where the object has none.</summary>
    public IReadOnlyList<(string Ink, string Value)> Inks { get; }

    /// <summary>A device that is no press, such as ColorRGB, or null.</summary>
    public string? OtherDevice { get; }

    /// <summary>Whether the object has a colour.</summary>
    public bool IsMeasured => Spectrum is not null || Labs.Count > 0 || Xyzs.Count > 0;

    /// <summary>Takes an object apart.</summary>
    public static CxfObject Of(int number, XElement element) => new(number, element);

    // Process inks are elements of their own; further inks carry their name and a percentage (from memory: SpotColor).
    private static (string, string)[] InksOf(XElement? device) => device is null ? [] : [.. device.Elements().Select(ink =>
    {
        string name = (string?)ink.Attribute("Name") ?? (string?)ink.Element(Core + "Name") ?? ink.Name.LocalName;
        XElement value = ink.Elements().LastOrDefault(e => e.Name.LocalName != "Name") ?? ink;
        return (name.Trim(), value.Value.Trim());
    })];
}
