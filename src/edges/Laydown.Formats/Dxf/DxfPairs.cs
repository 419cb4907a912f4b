using System.Globalization;
using System.Text;

namespace Laydown.Formats.Dxf;

/// <summary>Reads the groups of an ASCII DXF file one after the other.</summary>
/// <param name="reader">The text.</param>
internal sealed class DxfPairs(TextReader reader)
{
    private const int LongestLine = 4096;

    private readonly StringBuilder text = new();
    private int line;

    /// <summary>The next group, or null at the end of the file.</summary>
    internal DxfPair? Next()
    {
        int at = line + 1;
        string? code = Line();
        if (code is null || (code.Length == 0 && reader.Peek() < 0))
            return null;
        string value = Line() ?? throw new DxfFaultException(Invariant($"line {at + 1}"), "the end of the file", "a value behind its code");
        return int.TryParse(code, NumberStyles.Integer, CultureInfo.InvariantCulture, out int number)
            ? new(number, value, at)
            : throw new DxfFaultException(Invariant($"line {at}"), DxfEntity.Short(code), "a group code, as ASCII DXF has on every other line");
    }

    private string? Line()
    {
        text.Clear();
        line++;
        int c = reader.Read();
        if (c < 0)
            return null;
        for (; c is not (< 0 or '\n'); c = reader.Read())
        {
            if (text.Length >= LongestLine)
                throw new DxfFaultException(Invariant($"line {line}"), Invariant($"more than {LongestLine} characters"), "lines of usual length");
            text.Append((char)c);
        }

        return text.ToString().Trim();
    }
}
