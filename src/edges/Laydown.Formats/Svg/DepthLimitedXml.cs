using System.Xml;

namespace Laydown.Formats.Svg;

/// <summary>Reads XML down to a depth: drawing follows the nesting on the stack, and a stack that overflows ends the program.</summary>
/// <param name="inner">The reader below; owned.</param>
/// <param name="deepest">Deepest nesting.</param>
internal sealed class DepthLimitedXml(XmlReader inner, int deepest) : XmlReader
{
    public override int AttributeCount => inner.AttributeCount;

    public override string BaseURI => inner.BaseURI;

    public override int Depth => inner.Depth;

    public override bool EOF => inner.EOF;

    public override bool IsEmptyElement => inner.IsEmptyElement;

    public override string LocalName => inner.LocalName;

    public override string NamespaceURI => inner.NamespaceURI;

    public override XmlNameTable NameTable => inner.NameTable;

    public override XmlNodeType NodeType => inner.NodeType;

    public override string Prefix => inner.Prefix;

    public override ReadState ReadState => inner.ReadState;

    public override string Value => inner.Value;

    public override string GetAttribute(int i) => inner.GetAttribute(i);

    public override string? GetAttribute(string name) => inner.GetAttribute(name);

    public override string? GetAttribute(string name, string? namespaceURI) => inner.GetAttribute(name, namespaceURI);

    public override string? LookupNamespace(string prefix) => inner.LookupNamespace(prefix);

    public override bool MoveToAttribute(string name) => inner.MoveToAttribute(name);

    public override bool MoveToAttribute(string name, string? ns) => inner.MoveToAttribute(name, ns);

    public override bool MoveToElement() => inner.MoveToElement();

    public override bool MoveToFirstAttribute() => inner.MoveToFirstAttribute();

    public override bool MoveToNextAttribute() => inner.MoveToNextAttribute();

    public override bool Read()
    {
        bool more = inner.Read();
        if (more && inner.NodeType == XmlNodeType.Element && inner.Depth > deepest)
            throw new XmlException(Invariant($"Elements nested deeper than {deepest}."));
        return more;
    }

    public override bool ReadAttributeValue() => inner.ReadAttributeValue();

    public override void ResolveEntity() => inner.ResolveEntity();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            inner.Dispose();
        base.Dispose(disposing);
    }
}
