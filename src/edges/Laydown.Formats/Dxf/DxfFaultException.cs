namespace Laydown.Formats.Dxf;

/// <summary>Leaves the reading of a DXF file; never leaves the reader.</summary>
internal sealed class DxfFaultException : Exception
{
    internal DxfFaultException(string field, string found, string wanted)
        : base(field)
    {
        (Field, Found, Wanted) = (field, found, wanted);
    }

    internal string Field { get; }

    internal string Found { get; }

    internal string Wanted { get; }
}
