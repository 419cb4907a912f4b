using System.Xml;
using System.Xml.Linq;
using Laydown.Formats.Patches;
using Laydown.Formats.Svg;
using Laydown.Measures;
using static Laydown.Formats.Cxf.CxfNames;

namespace Laydown.Formats.Cxf;

/// <summary>What a CxF3 file holds of readings, taken object by object.</summary>
internal sealed class CxfContent
{
    /// <summary>What the file says of itself: description, creator, date and tags by name.</summary>
    public Dictionary<string, string> About { get; } = new(StringComparer.Ordinal);

    /// <summary>All objects, in order.</summary>
    public List<CxfObject> Objects { get; } = [];

    /// <summary>Colour specifications by id.</summary>
    public Dictionary<string, CxfSpec> Specs { get; } = new(StringComparer.Ordinal);

    /// <summary>Reads a file, or says why it cannot be taken: no DTD, no entity of its own, no deep nesting.</summary>
    public static Reading<CxfContent> Read(string file, Stream stream)
    {
        XmlReaderSettings settings = new()
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersInDocument = 2L * PatchLimits.Bytes,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            IgnoreWhitespace = true,
        };
        try
        {
            using DepthLimitedXml reader = new(XmlReader.Create(stream, settings), Depth);
            CxfContent content = new();
            return content.Take(file, reader) is { } fault ? Reading.Refused<CxfContent>(fault) : Reading.Of(content);
        }
        catch (XmlException damage)
        {
            return Reading.Refused<CxfContent>(new InputFault(
                file, null, damage.LineNumber > 0 ? Invariant($"XML, line {damage.LineNumber}") : "XML", damage.Message, Invariant($"whole XML without a DTD, at most {Depth} levels deep")));
        }
    }

    private InputFault? Take(string file, XmlReader reader)
    {
        reader.MoveToContent();
        if (reader.LocalName != "CxF" || reader.NamespaceURI != Core.NamespaceName)
            return new(file, null, "root element", Invariant($"{reader.LocalName} of {reader.NamespaceURI}"), Invariant($"CxF of {Core.NamespaceName}"));
        reader.Read();
        while (!reader.EOF)
        {
            if (reader.NodeType != XmlNodeType.Element || reader.NamespaceURI != Core.NamespaceName || !Take(reader))
                reader.Read();
            if (Objects.Count > 2 * PatchLimits.Rows)
                return new(file, null, "Object", Invariant($"more than {2 * PatchLimits.Rows}"), Invariant($"at most {PatchLimits.Rows} patches"));
        }

        return null;
    }

    // Whether the element was one that is kept; the reader then stands behind it.
    private bool Take(XmlReader reader)
    {
        switch (reader.LocalName)
        {
            case "Object":
                Objects.Add(CxfObject.Of(Objects.Count + 1, (XElement)XNode.ReadFrom(reader)));
                return true;
            case "ColorSpecification":
                XElement spec = (XElement)XNode.ReadFrom(reader);
                Specs[(string?)spec.Attribute("Id") ?? ""] = CxfSpec.Of(spec);
                return true;
            case "FileInformation":
                XElement about = (XElement)XNode.ReadFrom(reader);
                foreach (XElement said in about.Elements())
                    About[(string?)said.Attribute("Name") ?? said.Name.LocalName] = (string?)said.Attribute("Value") ?? said.Value.Trim();
                return true;
            default:
                return false;
        }
    }
}
