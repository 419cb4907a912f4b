using System.Buffers.Binary;
using System.Text;

namespace Laydown.Formats.PdfWriting;

/// <summary>A TrueType font file of our own, read far enough to measure it and to embed a part of it.</summary>
/// <remarks>Only fonts that lie in the project are read with it, so a broken one throws.</remarks>
public sealed class TrueTypeFont
{
    private static readonly string[] Kept = ["cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"];
    private readonly byte[] bytes;
    private readonly Dictionary<string, (int Offset, int Length)> tables = new(StringComparer.Ordinal);
    private readonly int longMetrics;
    private readonly bool longOffsets;

    /// <summary>Reads a font with outlines in <c>glyf</c>.</summary>
    /// <exception cref="ArgumentException">It has no such outlines.</exception>
    public TrueTypeFont(byte[] bytes)
    {
        this.bytes = bytes;
        int count = U16(4);
        for (int i = 0; i < count; i++)
        {
            int at = 12 + (16 * i);
            tables[Encoding.ASCII.GetString(bytes, at, 4)] = ((int)U32(at + 8), (int)U32(at + 12));
        }

        if (!tables.ContainsKey("glyf"))
            throw new ArgumentException("Font: found no table glyf; wanted TrueType outlines.", nameof(bytes));
        UnitsPerEm = U16(Start("head") + 18);
        longOffsets = U16(Start("head") + 50) == 1;
        longMetrics = U16(Start("hhea") + 34);
        Glyphs = U16(Start("maxp") + 4);
        Ascent = S16(Start("hhea") + 4);
        Descent = S16(Start("hhea") + 6);
        Box = [S16(Start("head") + 36), S16(Start("head") + 38), S16(Start("head") + 40), S16(Start("head") + 42)];
    }

    /// <summary>Units to the em.</summary>
    public int UnitsPerEm { get; }

    /// <summary>How many glyphs it has.</summary>
    public int Glyphs { get; }

    internal int Ascent { get; }

    internal int Descent { get; }

    internal IReadOnlyList<int> Box { get; }

    /// <summary>Advance width of a glyph, font units.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such glyph.</exception>
    public int Advance(int glyph)
    {
        Measures.Bounds.Within(glyph, 0, Glyphs - 1);
        return U16(Start("hmtx") + (4 * Math.Min(glyph, longMetrics - 1)));
    }

    /// <summary>The font with the outlines of the given glyphs alone; numbers of glyphs stay, all others become empty.</summary>
    internal byte[] Subset(IEnumerable<int> glyphs)
    {
        // A composite glyph needs the glyphs it is put together from.
        SortedSet<int> kept = [0];
        Stack<int> open = new(glyphs);
        while (open.TryPop(out int glyph))
        {
            if (kept.Add(glyph) || glyph == 0)
            {
                foreach (int part in Parts(glyph).Where(p => !kept.Contains(p)))
                    open.Push(part);
            }
        }

        // Outlines one behind the other, each at an even place, and the table of where they start.
        using MemoryStream outlines = new();
        byte[] places = new byte[4 * (Glyphs + 1)];
        for (int g = 0; g < Glyphs; g++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(places.AsSpan(4 * g), (uint)outlines.Length);
            if (kept.Contains(g))
            {
                outlines.Write(Outline(g));
                while (outlines.Length % 4 != 0)
                    outlines.WriteByte(0);
            }
        }

        BinaryPrimitives.WriteUInt32BigEndian(places.AsSpan(4 * Glyphs), (uint)outlines.Length);
        byte[] head = Table("head").ToArray();
        BinaryPrimitives.WriteUInt16BigEndian(head.AsSpan(50), 1);
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(8), 0);
        return Assemble(Kept.Where(tables.ContainsKey).Select(t => (t, t switch
        {
            "glyf" => outlines.ToArray(),
            "loca" => places,
            "head" => head,
            _ => Table(t).ToArray(),
        })).ToList());
    }

    private static byte[] Assemble(List<(string Tag, byte[] Data)> parts)
    {
        int power = 1;
        while (power * 2 <= parts.Count)
            power *= 2;
        byte[] all = new byte[12 + (16 * parts.Count) + parts.Sum(p => (p.Data.Length + 3) / 4 * 4)];
        BinaryPrimitives.WriteUInt32BigEndian(all, 0x00010000);
        BinaryPrimitives.WriteUInt16BigEndian(all.AsSpan(4), (ushort)parts.Count);
        BinaryPrimitives.WriteUInt16BigEndian(all.AsSpan(6), (ushort)(power * 16));
        BinaryPrimitives.WriteUInt16BigEndian(all.AsSpan(8), (ushort)Math.Log2(power));
        BinaryPrimitives.WriteUInt16BigEndian(all.AsSpan(10), (ushort)((parts.Count - power) * 16));
        int at = 12 + (16 * parts.Count);
        int headAt = 0;
        foreach ((int i, (string tag, byte[] data)) in parts.Index())
        {
            Span<byte> entry = all.AsSpan(12 + (16 * i));
            Encoding.ASCII.GetBytes(tag, entry);
            data.CopyTo(all, at);
            BinaryPrimitives.WriteUInt32BigEndian(entry[4..], Sum(all.AsSpan(at, (data.Length + 3) / 4 * 4)));
            BinaryPrimitives.WriteUInt32BigEndian(entry[8..], (uint)at);
            BinaryPrimitives.WriteUInt32BigEndian(entry[12..], (uint)data.Length);
            if (tag == "head")
                headAt = at;
            at += (data.Length + 3) / 4 * 4;
        }

        BinaryPrimitives.WriteUInt32BigEndian(all.AsSpan(headAt + 8), unchecked(0xB1B0AFBA - Sum(all)));
        return all;
    }

    private static uint Sum(ReadOnlySpan<byte> data)
    {
        uint sum = 0;
        for (int i = 0; i + 4 <= data.Length; i += 4)
            sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(data[i..]));
        return sum;
    }

    private IEnumerable<int> Parts(int glyph)
    {
        byte[] outline = Outline(glyph).ToArray();
        if (outline.Length < 10 || BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
            yield break;
        int at = 10;
        int flags;
        do
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at));
            yield return BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at + 2));

            // Bit 0: words instead of bytes; then one, two or four numbers of a matrix.
            at += 4 + ((flags & 1) != 0 ? 4 : 2) + ((flags & 8) != 0 ? 2 : (flags & 0x40) != 0 ? 4 : (flags & 0x80) != 0 ? 8 : 0);
        }
        while ((flags & 0x20) != 0);
    }

    private ReadOnlySpan<byte> Outline(int glyph)
    {
        int loca = Start("loca");
        int from = longOffsets ? (int)U32(loca + (4 * glyph)) : 2 * U16(loca + (2 * glyph));
        int to = longOffsets ? (int)U32(loca + (4 * glyph) + 4) : 2 * U16(loca + (2 * glyph) + 2);
        return bytes.AsSpan(Start("glyf") + from, to - from);
    }

    private ReadOnlySpan<byte> Table(string tag) => bytes.AsSpan(tables[tag].Offset, tables[tag].Length);

    private int Start(string tag) => tables[tag].Offset;

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at));

    private int S16(int at) => BinaryPrimitives.ReadInt16BigEndian(bytes.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at));
}
