using System.Text;
using Laydown.Measures;

namespace Laydown.Formats.Dxf;

/// <summary>Writes closed and open lines as ASCII DXF of release 12, which every cutter's program reads: polylines on named layers, mm. [Dxf2000]</summary>
public static class DxfWriter
{
    /// <summary>The file; no comments, line ends as on the format's own machines.</summary>
    /// <param name="stream">Takes it; left open.</param>
    /// <param name="lines">Lines with the layer of each, mm, y upward; layer names are brought to letters, digits and underscores.</param>
    public static void Write(Stream stream, IReadOnlyList<DxfLine> lines)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(lines);
        using StreamWriter text = new(stream, Encoding.ASCII, 1 << 16, leaveOpen: true) { NewLine = "\r\n" };
        void Put(int code, string value) => text.Write(Invariant($"{code,3}\r\n{value}\r\n"));
        void Number(int code, double value) => Put(code, value.ToString("0.0#####", System.Globalization.CultureInfo.InvariantCulture));

        PointMm[] all = [.. lines.SelectMany(l => l.Points)];
        (double left, double low, double right, double top) = all.Length == 0 ? (0, 0, 0, 0) : (all.Min(p => p.XMm), all.Min(p => p.YMm), all.Max(p => p.XMm), all.Max(p => p.YMm));
        Put(0, "SECTION");
        Put(2, "HEADER");
        Put(9, "$ACADVER");
        Put(1, "AC1009");
        Put(9, "$INSUNITS");
        Put(70, "4");
        Put(9, "$EXTMIN");
        Number(10, left);
        Number(20, low);
        Number(30, 0);
        Put(9, "$EXTMAX");
        Number(10, right);
        Number(20, top);
        Number(30, 0);
        Put(0, "ENDSEC");
        Layers(Put, [.. lines.Select(l => Layer(l.Layer)).Distinct(StringComparer.Ordinal)]);
        Put(0, "SECTION");
        Put(2, "ENTITIES");
        foreach (DxfLine line in lines)
            Polyline(Put, Number, line);
        Put(0, "ENDSEC");
        Put(0, "EOF");
    }

    private static void Layers(Action<int, string> put, IReadOnlyList<string> layers)
    {
        put(0, "SECTION");
        put(2, "TABLES");
        put(0, "TABLE");
        put(2, "LAYER");
        put(70, Invariant($"{layers.Count}"));
        for (int i = 0; i < layers.Count; i++)
        {
            put(0, "LAYER");
            put(2, layers[i]);
            put(70, "0");
            put(62, Invariant($"{1 + (i % 6)}"));
            put(6, "CONTINUOUS");
        }

        put(0, "ENDTAB");
        put(0, "ENDSEC");
    }

    private static void Polyline(Action<int, string> put, Action<int, double> number, DxfLine line)
    {
        string layer = Layer(line.Layer);
        put(0, "POLYLINE");
        put(8, layer);
        put(66, "1");
        number(10, 0);
        number(20, 0);
        number(30, 0);
        put(70, line.Closed ? "1" : "0");
        foreach (PointMm point in line.Points)
        {
            put(0, "VERTEX");
            put(8, layer);
            number(10, point.XMm);
            number(20, point.YMm);
            number(30, 0);
        }

        put(0, "SEQEND");
        put(8, layer);
    }

    // Release 12 takes 31 capital letters, digits, hyphens and underscores.
    private static string Layer(string name)
    {
        string plain = new([.. name.ToUpperInvariant().Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_').Take(31)]);
        return plain.Length > 0 ? plain : "0";
    }
}
