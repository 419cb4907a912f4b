using System.Xml;
using System.Xml.Linq;
using Laydown.Formats.Images;
using Laydown.Measures;
using NetVips;

namespace Laydown.Formats.Svg;

/// <summary>Makes an SVG safe to draw: programs are taken out; whatever points outside the file, or repeats without end, is refused.</summary>
/// <param name="file">Name of the file, for faults.</param>
/// <param name="limits">How much work it may make.</param>
internal sealed class SvgCleaning(string file, SvgLimits limits)
{
    private static readonly string[] TakenOut = ["script", "foreignObject", "handler", "listener", "set", "animate", "animateMotion", "animateTransform", "animateColor"];
    private static readonly XName Link = XName.Get("href", "http://www.w3.org/1999/xlink");

    /// <summary>The document, or why it cannot be taken.</summary>
    public Reading<XDocument> Load(Stream stream)
    {
        try
        {
            // Entities are not read: they can name files, and grow without end.
            var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null, MaxCharactersInDocument = 256_000_000, IgnoreComments = true, IgnoreProcessingInstructions = true };
            using var reader = new DepthLimitedXml(XmlReader.Create(stream, settings), limits.Depth);
            var document = XDocument.Load(reader);
            return document.Root?.Name.LocalName == "svg" ? Clean(document) : Refused("root element", document.Root?.Name.LocalName ?? "none", "svg");
        }
        catch (XmlException damage)
        {
            return Refused(Invariant($"XML, line {damage.LineNumber}"), damage.Message, "whole XML without entities of its own");
        }
    }

    private Reading<XDocument> Refused(string field, string found, string wanted) => Reading.Refused<XDocument>(new InputFault(file, null, field, found, wanted));

    private Reading<XDocument> Clean(XDocument document)
    {
        document.Descendants().Where(e => TakenOut.Contains(e.Name.LocalName)).ToList().ForEach(e => e.Remove());
        foreach (var element in document.Descendants())
        {
            element.Attributes().Where(a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase)).Remove();
            if (Outside(element) is { } fault)
                return Reading.Refused<XDocument>(fault);
        }

        long drawn = Drawn(document);
        return drawn <= limits.Elements
            ? Reading.Of(document)
            : Refused("elements", drawn == long.MaxValue ? "an element that uses itself" : Invariant($"{drawn} elements drawn"), Invariant($"at most {limits.Elements}"));
    }

    /// <summary>What an element fetches must lie in the file. A link to follow by hand is no part of the picture.</summary>
    private InputFault? Outside(XElement element)
    {
        string target = ((string?)element.Attribute("href") ?? (string?)element.Attribute(Link) ?? "").Trim();
        string name = element.Name.LocalName;
        if (name != "a" && target.Length > 0 && target[0] != '#')
        {
            if (name is not ("image" or "feImage") || Picture(target) is not { } picture)
                return new(file, null, name + " href", Short(target), "something within the file (#name) or an embedded PNG or JPEG");
            if (Pixels(picture) is { } fault)
                return fault;
        }

        string styles = string.Join(' ', element.Attributes().Select(a => a.Value)) + (name == "style" ? element.Value : "");
        return Fetches(styles) ? new(file, null, name + " style", "@import or url() that points outside the file", "styles within the file") : null;
    }

    private static bool Fetches(string styles)
    {
        if (styles.Contains("@import", StringComparison.OrdinalIgnoreCase))
            return true;
        for (int at = styles.IndexOf("url(", StringComparison.OrdinalIgnoreCase); at >= 0; at = styles.IndexOf("url(", at + 4, StringComparison.OrdinalIgnoreCase))
        {
            string target = styles[(at + 4)..].TrimStart(' ', '\'', '"', '\t', '\n', '\r');
            if (!target.StartsWith('#') && !target.StartsWith("data:font", StringComparison.OrdinalIgnoreCase) && !target.StartsWith("data:application", StringComparison.OrdinalIgnoreCase))
                return true;
        }

        return false;
    }

    private static byte[]? Picture(string target)
    {
        int comma = target.IndexOf(',', StringComparison.Ordinal);
        string head = comma < 0 ? "" : target[..comma].ToLowerInvariant();
        if (head is not ("data:image/png;base64" or "data:image/jpeg;base64" or "data:image/jpg;base64"))
            return null;
        try
        {
            return Convert.FromBase64String(target[(comma + 1)..]);
        }
        catch (FormatException)
        {
            return null;
        }
    }

    private InputFault? Pixels(byte[] picture)
    {
        try
        {
            using var image = ImageFile.OpenWithin(picture);
            long pixels = (long)image.Width * image.Height;
            if (pixels > limits.Pixels)
                return new(file, null, "embedded picture", Invariant($"{pixels / 1e6:0.#} Mpx"), Invariant($"at most {limits.Pixels / 1e6:0.#} Mpx"));
            _ = image.Avg();
            return null;
        }
        catch (VipsException)
        {
            return new(file, null, "embedded picture", "damaged or cut short", "a whole PNG or JPEG");
        }
    }

    /// <summary>Elements drawn, each use counted with all it repeats; the largest number where one uses itself.</summary>
    private static long Drawn(XDocument document)
    {
        var known = new Dictionary<XElement, long>();
        var byName = document.Descendants().Where(e => e.Attribute("id") is not null).GroupBy(e => (string)e.Attribute("id")!).ToDictionary(g => g.Key, g => g.First());
        return Count(document.Root!, byName, known, []);
    }

    private static long Count(XElement element, Dictionary<string, XElement> byName, Dictionary<XElement, long> known, HashSet<XElement> open)
    {
        if (known.TryGetValue(element, out long before))
            return before;
        if (!open.Add(element) || open.Count > 2000)
            return long.MaxValue;

        double all = 1;
        foreach (var child in element.Elements())
            all += Count(child, byName, known, open);
        string target = ((string?)element.Attribute("href") ?? (string?)element.Attribute(Link) ?? "").Trim();
        if (element.Name.LocalName == "use" && target.Length > 1 && byName.TryGetValue(target[1..], out var used))
            all += Count(used, byName, known, open);
        open.Remove(element);
        return known[element] = all >= long.MaxValue ? long.MaxValue : (long)all;
    }

    private static string Short(string text) => text.Length > 60 ? text[..60] + "…" : text;
}
