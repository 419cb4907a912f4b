using Laydown.Colour.Readings;
using Laydown.Formats.Cgats;
using Laydown.Formats.Cxf;
using Laydown.Formats.Patches;
using Laydown.Measures;

namespace Laydown.Formats.Readings;

/// <summary>Reads a file of readings whatever its format, told from its bytes: CxF3 XML, CGATS.17 text or CSV.</summary>
public static class ReadingsFile
{
    /// <summary>The readings of a file, or why they cannot be taken.</summary>
    /// <param name="file">Name of the file without its folder.</param>
    /// <param name="bytes">The whole file, at most 64 MiB.</param>
    public static Reading<ReadingSet> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        if (PatchLimits.Refuse(file, bytes.Length) is { } size)
            return Reading.Refused<ReadingSet>(size);
        if (FileText.Decode(bytes.Span) is not { } text)
            return Reading.Refused<ReadingSet>(new InputFault(file, null, "file", "bytes that are no text", "CxF3, CGATS.17 text or CSV"));
        if (text.AsSpan().TrimStart().StartsWith("<", StringComparison.Ordinal))
            return CxfReader.Read(file, bytes);
        return text.Contains("BEGIN_DATA", StringComparison.OrdinalIgnoreCase) ? CgatsReader.Read(file, bytes) : ReadingsCsv.Read(file, bytes);
    }
}
