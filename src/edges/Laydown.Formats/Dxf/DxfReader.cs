using System.Text;
using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Formats.Dxf;

/// <summary>Reads lines from ASCII DXF, releases 12 to 2018: LINE, LWPOLYLINE, POLYLINE with bulges, ARC, CIRCLE, ELLIPSE, SPLINE. [Dxf2000]</summary>
/// <remarks>Blocks, text, hatches and solids are left out with a finding. Units follow <c>$INSUNITS</c>; where it is missing, mm are taken with a finding.</remarks>
public static class DxfReader
{
    /// <summary>A binary file has a zero byte behind its first line.</summary>
    private const int FirstChars = 24;

    /// <summary>The lines of the drawing in mm, or why it cannot be taken.</summary>
    /// <param name="file">Name of the file, for faults.</param>
    /// <param name="stream">Its bytes; read to the end of the entities, left open.</param>
    /// <param name="limits">How much is taken.</param>
    /// <param name="toleranceMm">How far flattened curves may lie off, mm.</param>
    public static Reading<DxfDrawing> Read(string file, Stream stream, DxfLimits limits, double toleranceMm = Curves.UsualToleranceMm)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(limits);
        try
        {
            using StreamReader text = new(new LimitedStream(stream, limits.MostBytes), Encoding.Latin1, false, 1 << 16, leaveOpen: true);
            char[] first = new char[FirstChars];
            int read = text.ReadBlock(first, 0, first.Length);
            if (first.AsSpan(0, read).Contains('\0'))
                throw new DxfFaultException("file", "binary DXF", "ASCII DXF");
            using JoinedReader whole = new(new string(first, 0, read), text);
            return Drawing(new DxfPairs(whole), limits, toleranceMm);
        }
        catch (DxfFaultException fault)
        {
            return Reading.Refused<DxfDrawing>(new InputFault(file, null, fault.Field, fault.Found, fault.Wanted));
        }
    }

    private static Reading<DxfDrawing> Drawing(DxfPairs pairs, DxfLimits limits, double toleranceMm)
    {
        int? units = null;
        DxfLines lines = new(limits, toleranceMm);
        string section = "", variable = "";
        bool any = false, ended = false;
        while (pairs.Next() is { } pair)
        {
            any = true;
            if (pair is { Code: 0, Text: "EOF" })
            {
                ended = true;
                break;
            }

            if (pair is { Code: 0, Text: "SECTION" })
                section = pairs.Next() is { Code: 2 } name ? name.Text : throw new DxfFaultException(Invariant($"line {pair.Line}, SECTION"), "no name", "a name of the section");
            else if (pair is { Code: 0, Text: "ENDSEC" })
                section = "";
            else if (section == "HEADER" && pair.Code == 9)
                variable = pair.Text;
            else if (section == "HEADER" && variable == "$INSUNITS" && pair.Code == 70)
                units = new DxfEntity("$INSUNITS", pair.Line).Parsed(pair) is var u and >= 0 and <= 24 ? (int)u : null;
            else if (section == "ENTITIES")
                lines.Take(pair);
        }

        if (!any || !ended)
            throw new DxfFaultException("file", any ? "no EOF at its end: it was cut short" : "0 bytes", "a whole ASCII DXF");
        lines.End();
        return Reading.Of(DxfUnits.Apply(lines, units));
    }

    // What was read to look at the first bytes, and then the rest.
    private sealed class JoinedReader(string first, TextReader rest) : TextReader
    {
        private int at;

        public override int Peek() => at < first.Length ? first[at] : rest.Peek();

        public override int Read() => at < first.Length ? first[at++] : rest.Read();
    }
}
