using System.Buffers.Binary;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Writes small TIFF files tag by tag, little-endian, classic or big, so that a test can lie in each of them.</summary>
internal sealed class HandTiff
{
    public int Width { get; init; } = 100;

    public int Length { get; init; } = 80;

    public int Samples { get; init; } = 3;

    public int Bits { get; init; } = 8;

    public int Photometric { get; init; } = 2;

    public int Compression { get; init; } = 1;

    /// <summary>1 whole numbers, 2 signed, 3 floating point.</summary>
    public int SampleFormat { get; init; } = 1;

    public int RowsPerStrip { get; init; } = 10;

    /// <summary>Side of a tile; 0 = strips.</summary>
    public int Tile { get; init; }

    public bool Big { get; init; }

    public IReadOnlyList<(int Tag, int Type, long[] Values)> More { get; init; } = [];

    /// <summary>Changes the places before they are written.</summary>
    public Func<long[], long[]> Offsets { get; init; } = o => o;

    /// <summary>Changes the lengths before they are written.</summary>
    public Func<long[], long[]> Counts { get; init; } = c => c;

    /// <summary>The file around strips or tiles.</summary>
    public byte[] Of(params IReadOnlyList<byte[]> pieces)
    {
        int word = Big ? 8 : 4, header = Big ? 16 : 8;
        List<long> places = [];
        long next = header;
        foreach (byte[] piece in pieces)
        {
            places.Add(next);
            next += piece.Length;
        }

        long[] offsets = Offsets([.. places]), counts = Counts([.. pieces.Select(p => (long)p.Length)]);
        List<(int Tag, int Type, long[] Values)> tags =
        [
            (256, 4, [Width]), (257, 4, [Length]), (258, 3, [.. Enumerable.Repeat((long)Bits, Samples)]), (259, 3, [Compression]), (262, 3, [Photometric]),
            (277, 3, [Samples]), (339, 3, [.. Enumerable.Repeat((long)SampleFormat, Samples)]),
            .. Tile > 0
                ? new[] { (322, 4, [Tile]), (323, 4, [Tile]), (324, Big ? 16 : 4, offsets), (325, 4, counts) }
                : new[] { (273, Big ? 16 : 4, offsets), (278, 4, new long[] { RowsPerStrip }), (279, 4, counts) },
            .. More,
        ];
        using var file = new MemoryStream();
        file.Write(Big ? [(byte)'I', (byte)'I', 43, 0, 8, 0, 0, 0] : [(byte)'I', (byte)'I', 42, 0]);
        Put(file, next, word);
        foreach (byte[] piece in pieces)
            file.Write(piece);

        long behind = next + (Big ? 8 : 2) + (tags.Count * (Big ? 20 : 12)) + word;
        using var values = new MemoryStream();
        Put(file, tags.Count, Big ? 8 : 2);
        foreach (var (tag, type, all) in tags.OrderBy(t => t.Tag))
        {
            Put(file, tag, 2);
            Put(file, type, 2);
            Put(file, all.Length, word);
            int size = type switch { 3 => 2, 4 => 4, _ => 8 };
            bool inside = all.Length * size <= word;
            if (!inside)
                Put(file, behind + values.Length, word);
            foreach (long value in all)
                Put(inside ? file : values, value, size);
            for (int pad = all.Length * size; inside && pad < word; pad++)
                file.WriteByte(0);
        }

        Put(file, 0, word);
        values.WriteTo(file);
        return file.ToArray();
    }

    private static void Put(MemoryStream target, long value, int bytes)
    {
        Span<byte> raw = stackalloc byte[8];
        BinaryPrimitives.WriteInt64LittleEndian(raw, value);
        target.Write(raw[..bytes]);
    }
}
