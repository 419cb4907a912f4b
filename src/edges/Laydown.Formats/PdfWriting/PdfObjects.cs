using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace Laydown.Formats.PdfWriting;

/// <summary>Writes numbered PDF objects one after the other onto a stream and ends them with a classic cross-reference table.</summary>
/// <remarks>Nothing is kept but the offsets. The same calls give the same bytes.</remarks>
internal sealed class PdfObjects
{
    private readonly Stream target;
    private readonly List<long> offsets = [0];
    private long written;

    /// <summary>Starts a file of version 1.6 on <paramref name="stream"/>, which stays open.</summary>
    public PdfObjects(Stream stream)
    {
        target = stream;
        Put("%PDF-1.6\n%\u00e2\u00e3\u00cf\u00d3\n");
    }

    /// <summary>A number for an object that is written later.</summary>
    public int Reserve()
    {
        offsets.Add(-1);
        return offsets.Count - 1;
    }

    /// <summary>Writes an object of a reserved number.</summary>
    public void Write(int id, string body)
    {
        Begin(id);
        Put(body);
        Put("\nendobj\n");
    }

    /// <summary>Writes an object and gives its number.</summary>
    public int Add(string body)
    {
        int id = Reserve();
        Write(id, body);
        return id;
    }

    /// <summary>Writes a stream object; its length follows as an object of its own, so that nothing is held in memory.</summary>
    /// <param name="id">A reserved number.</param>
    /// <param name="entries">Entries of its dictionary without length and filter.</param>
    /// <param name="deflate">Whether its bytes are deflated here; else they come ready-made.</param>
    /// <param name="content">Writes the bytes.</param>
    public void WriteStream(int id, string entries, bool deflate, Action<Stream> content)
    {
        int length = Reserve();
        Begin(id);
        Put(Invariant($"<< {entries}{(deflate ? " /Filter /FlateDecode" : "")} /Length {length} 0 R >>\nstream\n"));
        long bytes = Counted(deflate, content);
        written += bytes;
        Put("\nendstream\nendobj\n");
        Write(length, bytes.ToString(CultureInfo.InvariantCulture));
    }

    /// <summary>As above, with a number of its own.</summary>
    public int AddStream(string entries, bool deflate, Action<Stream> content)
    {
        int id = Reserve();
        WriteStream(id, entries, deflate, content);
        return id;
    }

    /// <summary>Writes cross-reference table and trailer.</summary>
    /// <exception cref="InvalidOperationException">A reserved object was never written.</exception>
    public void Finish(int root, int info, string idHex)
    {
        long start = written;
        StringBuilder table = new();
        table.Append(CultureInfo.InvariantCulture, $"xref\n0 {offsets.Count}\n0000000000 65535 f \n");
        foreach ((int id, long offset) in offsets.Index().Skip(1))
        {
            if (offset < 0)
                throw new InvalidOperationException(Invariant($"PDF object {id} was reserved and not written."));
            table.Append(CultureInfo.InvariantCulture, $"{offset:0000000000} 00000 n \n");
        }

        table.Append(CultureInfo.InvariantCulture, $"trailer\n<< /Size {offsets.Count} /Root {root} 0 R /Info {info} 0 R /ID [<{idHex}> <{idHex}>] >>\n");
        table.Append(CultureInfo.InvariantCulture, $"startxref\n{start}\n%%EOF\n");
        Put(table.ToString());
        target.Flush();
    }

    private void Begin(int id)
    {
        offsets[id] = written;
        Put(Invariant($"{id} 0 obj\n"));
    }

    private void Put(string text)
    {
        byte[] bytes = Encoding.Latin1.GetBytes(text);
        target.Write(bytes);
        written += bytes.Length;
    }

    private long Counted(bool deflate, Action<Stream> content)
    {
        using CountingStream counted = new(target);
        if (deflate)
        {
            using ZLibStream packed = new(counted, CompressionLevel.Optimal, leaveOpen: true);
            content(packed);
        }
        else
        {
            content(counted);
        }

        return counted.Written;
    }

    /// <summary>Counts what goes through, as the target may not be able to tell its place.</summary>
    private sealed class CountingStream(Stream inner) : Stream
    {
        public long Written { get; private set; }

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => Written;
            set => throw new NotSupportedException();
        }

        public override void Flush() => inner.Flush();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            inner.Write(buffer);
            Written += buffer.Length;
        }
    }
}
