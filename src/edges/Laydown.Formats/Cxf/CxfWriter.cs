using System.Text;
using System.Xml;
using Laydown.Colour.Readings;
using Laydown.Formats.Patches;
using static Laydown.Formats.Cxf.CxfNames;

namespace Laydown.Formats.Cxf;

/// <summary>Writes readings as CxF3 XML [ISO17972-1]: one object for each reading, with inks, Lab and spectrum.</summary>
/// <remarks>
/// UTF-8. Inks in percent: process inks by their elements (all four, as the format wants them), further inks as SpotColor (from memory).
/// Numbers read back the same. Characters that XML does not allow become blanks.
/// </remarks>
public static class CxfWriter
{
    /// <summary>Writes a set; the stream stays open.</summary>
    /// <exception cref="ArgumentException">The set has no patch.</exception>
    public static void Write(ReadingSet set, Stream stream)
    {
        if (set.Patches.Count == 0)
            throw new ArgumentException("Readings: found no patch; wanted at least one.", nameof(set));

        XmlWriterSettings settings = new() { Encoding = new UTF8Encoding(false), Indent = true, CloseOutput = false, NewLineChars = "\n" };
        using XmlWriter xml = XmlWriter.Create(stream, settings);
        xml.WriteStartElement("cc", "CxF", Core.NamespaceName);
        WriteAbout(set, xml);
        Open(xml, "Resources");
        Open(xml, "ObjectCollection");
        for (int i = 0; i < set.Patches.Count; i++)
            WriteObject(set, i, xml);
        xml.WriteEndElement();
        WriteSpecs(set, xml);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void WriteAbout(ReadingSet set, XmlWriter xml)
    {
        MeasuredHow how = set.Measured;
        Open(xml, "FileInformation");
        Leaf(xml, "Creator", "Laydown");
        if (Date(how.Created) is { } date)
            Leaf(xml, "CreationDate", date);
        Leaf(xml, "Description", set.Name);
        (string, string)[] tags =
        [
            ("Inks", string.Join('|', set.InkNames)), ("Instrument", how.Instrument), ("Condition", how.Condition), ("Backing", how.Backing),
            ("Created", how.Created), ("Statement", how.Statement),
        ];
        foreach ((string name, string value) in tags.Where(t => t.Item2.Length > 0))
            Tag(xml, name, value);
        xml.WriteEndElement();
    }

    private static void WriteObject(ReadingSet set, int index, XmlWriter xml)
    {
        Patch patch = set.Patches[index];
        Open(xml, "Object");
        xml.WriteAttributeString("ObjectType", set.Measured.Condition.Length > 0 ? Clean(set.Measured.Condition) + "_Measurement" : "Measurement");
        xml.WriteAttributeString("Name", Clean(patch.Id));
        xml.WriteAttributeString("Id", Invariant($"c{index + 1}"));
        Open(xml, "ColorValues");
        if (set.IsSpectral)
        {
            Open(xml, "ReflectanceSpectrum");
            xml.WriteAttributeString("ColorSpecification", "Measured");
            xml.WriteAttributeString("StartWL", Invariant($"{patch.Spectrum!.FirstNm}"));
            xml.WriteString(string.Join(' ', patch.Spectrum.Values.Select(FileNumber.Write)));
            xml.WriteEndElement();
        }

        Open(xml, "ColorCIELab");
        xml.WriteAttributeString("ColorSpecification", "Measured");
        Leaf(xml, "L", FileNumber.Write(patch.Lab.L));
        Leaf(xml, "A", FileNumber.Write(patch.Lab.A));
        Leaf(xml, "B", FileNumber.Write(patch.Lab.B));
        xml.WriteEndElement();
        xml.WriteEndElement();
        WriteInks(set, patch, xml);
        Open(xml, "TagCollection");
        xml.WriteAttributeString("Name", "Location");
        Tag(xml, "SampleID", patch.Id);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void WriteInks(ReadingSet set, Patch patch, XmlWriter xml)
    {
        Open(xml, "DeviceColorValues");
        Open(xml, set.InkNames.All(Process.Contains) ? "ColorCMYK" : "ColorCMYKPlusN");
        foreach (string process in Process)
            Leaf(xml, process, Enumerable.Range(0, set.InkNames.Count).Where(i => set.InkNames[i] == process).Select(i => FileNumber.Write(patch.Inks[i] * 100)).FirstOrDefault("0"));
        for (int ink = 0; ink < set.InkNames.Count; ink++)
        {
            if (Process.Contains(set.InkNames[ink]))
                continue;
            Open(xml, "SpotColor");
            xml.WriteAttributeString("Name", Clean(set.InkNames[ink]));
            Leaf(xml, "Percentage", FileNumber.Write(patch.Inks[ink] * 100));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void WriteSpecs(ReadingSet set, XmlWriter xml)
    {
        Open(xml, "ColorSpecificationCollection");
        Open(xml, "ColorSpecification");
        xml.WriteAttributeString("Id", "Measured");
        Open(xml, "TristimulusSpec");
        Leaf(xml, "Illuminant", "D50");
        Leaf(xml, "Observer", "2_Degree");
        xml.WriteEndElement();
        Open(xml, "MeasurementSpec");
        Leaf(xml, "MeasurementType", set.IsSpectral ? "Spectrum_Reflectance" : "Colorimetric_Reflectance");
        Open(xml, "GeometryChoice");
        Leaf(xml, "UnknownGeometry", set.Measured.Statement.Length > 0 ? set.Measured.Statement : "Unknown");
        xml.WriteEndElement();
        if (set.IsSpectral)
        {
            Open(xml, "WavelengthRange");
            xml.WriteAttributeString("StartWL", Invariant($"{set.Patches[0].Spectrum!.FirstNm}"));
            xml.WriteAttributeString("Increment", Invariant($"{set.Patches[0].Spectrum!.StepNm}"));
            xml.WriteEndElement();
        }

        if (Illumination(set.Measured.Condition) is { Length: > 0 } light)
        {
            Open(xml, "Device");
            Leaf(xml, "DeviceIllumination", light);
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void Tag(XmlWriter xml, string name, string value)
    {
        Open(xml, "Tag");
        xml.WriteAttributeString("Name", name);
        xml.WriteAttributeString("Value", Clean(value));
        xml.WriteEndElement();
    }

    private static void Open(XmlWriter xml, string name) => xml.WriteStartElement("cc", name, Core.NamespaceName);

    private static void Leaf(XmlWriter xml, string name, string text) => xml.WriteElementString("cc", name, Core.NamespaceName, Clean(text));

    // A lone half of a surrogate pair is no character either.
    private static string Clean(string text) =>
        string.Concat(text.EnumerateRunes().Select(r => r.Value > 0xFFFF || XmlConvert.IsXmlChar((char)r.Value) ? r.ToString() : " "));

    private static string? Date(string created)
    {
        try
        {
            return created.Contains('T', StringComparison.Ordinal) ? XmlConvert.ToString(XmlConvert.ToDateTimeOffset(created)) : null;
        }
        catch (FormatException)
        {
            return null;
        }
    }
}
