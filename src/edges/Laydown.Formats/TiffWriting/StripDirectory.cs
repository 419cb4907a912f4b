using System.Buffers.Binary;
using System.Text;
using Laydown.Measures;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Formats.TiffWriting;

/// <summary>The fields of a press file's directory, read with limits: nothing in it is believed before it is checked against the file.</summary>
internal sealed class StripDirectory
{
    private const int MostFields = 200, MostTextBytes = 1 << 16, EntryBytes = 20;

    private readonly SafeFileHandle file;
    private readonly string name;
    private readonly long length;
    private readonly Dictionary<ushort, (ushort Type, long Count, byte[] Inline)> fields = [];

    private StripDirectory(SafeFileHandle file, string name)
    {
        this.file = file;
        this.name = name;
        length = RandomAccess.GetLength(file);
    }

    /// <summary>Length of the file.</summary>
    public long FileBytes => length;

    /// <summary>Reads the directory.</summary>
    /// <param name="file">An open file.</param>
    /// <param name="name">Its name for messages.</param>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static Reading<StripDirectory> Read(SafeFileHandle file, string name)
    {
        StripDirectory directory = new(file, name);
        return directory.Fill() is { } fault ? Reading.Refused<StripDirectory>(fault) : Reading.Of(directory);
    }

    /// <summary>Whether the field is there.</summary>
    public bool Has(ushort tag) => fields.ContainsKey(tag);

    /// <summary>One whole number; the default where the field is missing; -1 where it is no whole number.</summary>
    public long Number(ushort tag, long missing) => !Has(tag) ? missing : Numbers(tag, 1) is [long one] ? one : -1;

    /// <summary>All whole numbers of a field, or null where it is missing, has another count, or lies outside the file.</summary>
    public long[]? Numbers(ushort tag, long count)
    {
        if (!fields.TryGetValue(tag, out (ushort Type, long Count, byte[] Inline) field) || field.Count != count
            || field.Type is not (TiffTags.Short or TiffTags.Long or TiffTags.Long8) || Bytes(field) is not { } bytes)
            return null;
        long[] numbers = new long[count];
        for (int i = 0; i < numbers.Length; i++)
        {
            numbers[i] = field.Type switch
            {
                TiffTags.Short => BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(2 * i)),
                TiffTags.Long => BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(4 * i)),
                _ => BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(8 * i)),
            };
        }

        return numbers;
    }

    /// <summary>A fraction as a number; 0 where it is missing or is none.</summary>
    public double Fraction(ushort tag)
    {
        if (!fields.TryGetValue(tag, out (ushort Type, long Count, byte[] Inline) field) || field is not { Type: TiffTags.Rational, Count: 1 })
            return 0;
        uint below = BinaryPrimitives.ReadUInt32LittleEndian(field.Inline.AsSpan(4));
        return below == 0 ? 0 : BinaryPrimitives.ReadUInt32LittleEndian(field.Inline) / (double)below;
    }

    /// <summary>Texts of a field, parted by zeros; empty where it is missing or too long.</summary>
    public IReadOnlyList<string> Texts(ushort tag) =>
        fields.TryGetValue(tag, out (ushort Type, long Count, byte[] Inline) field)
        && field is { Type: TiffTags.Ascii, Count: <= MostTextBytes } && Bytes(field) is { } bytes
            ? Encoding.ASCII.GetString(bytes).Split('\0', StringSplitOptions.RemoveEmptyEntries)
            : [];

    private InputFault? Fill()
    {
        byte[] head = new byte[16];
        if (!TiffWriting.FileBytes.TryRead(file, head, 0))
            return Fault("file", Invariant($"{length} bytes"), "a BigTIFF");
        if (!head.AsSpan(0, 8).SequenceEqual(new byte[] { (byte)'I', (byte)'I', 43, 0, 8, 0, 0, 0 }))
            return Fault("file", Invariant($"first bytes {Convert.ToHexString(head, 0, 8)}"), "a little-endian BigTIFF, as press files are");
        long at = BinaryPrimitives.ReadInt64LittleEndian(head.AsSpan(8));
        byte[] count = new byte[8];
        if (at == 0)
            return Fault("directory", "none: the file was never finished", "a finished file");
        if (at < 16 || at > length - 8 || !TiffWriting.FileBytes.TryRead(file, count, at))
            return Fault("directory", Invariant($"offset {at} in a file of {length} bytes"), "an offset within the file");
        long many = BinaryPrimitives.ReadInt64LittleEndian(count);
        if (many is < 1 or > MostFields || at + 8 + (many * EntryBytes) > length)
            return Fault("directory", Invariant($"{many} fields"), Invariant($"1 to {MostFields} fields within the file"));
        return FillFields(at + 8, (int)many);
    }

    private InputFault? FillFields(long at, int count)
    {
        byte[] lines = new byte[count * EntryBytes];
        if (!TiffWriting.FileBytes.TryRead(file, lines, at))
            return Fault("directory", "its end beyond the file", "a whole directory");
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<byte> line = lines.AsSpan(i * EntryBytes, EntryBytes);
            ushort tag = BinaryPrimitives.ReadUInt16LittleEndian(line);
            ushort type = BinaryPrimitives.ReadUInt16LittleEndian(line[2..]);
            long values = BinaryPrimitives.ReadInt64LittleEndian(line[4..]);
            if (!fields.TryAdd(tag, (type, values, line[12..].ToArray())))
                return Fault("directory", Invariant($"field {tag} twice"), "each field once");
        }

        return null;
    }

    private byte[]? Bytes((ushort Type, long Count, byte[] Inline) field)
    {
        int size = TiffTags.SizeOf(field.Type);
        if (size == 0 || field.Count < 1 || field.Count > length / size || field.Count * size > int.MaxValue)
            return null;
        byte[] bytes = new byte[field.Count * size];
        if (bytes.Length <= 8)
        {
            field.Inline.AsSpan(0, bytes.Length).CopyTo(bytes);
            return bytes;
        }

        long at = BinaryPrimitives.ReadInt64LittleEndian(field.Inline);
        return at >= 16 && at <= length - bytes.Length && TiffWriting.FileBytes.TryRead(file, bytes, at) ? bytes : null;
    }

    private InputFault Fault(string field, string found, string wanted) => new(name, null, field, found, wanted);
}
