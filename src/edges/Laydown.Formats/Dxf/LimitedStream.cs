namespace Laydown.Formats.Dxf;

/// <summary>Reads no more than a number of bytes, then refuses.</summary>
/// <param name="inner">The stream below; left open.</param>
/// <param name="most">Most bytes.</param>
internal sealed class LimitedStream(Stream inner, long most) : Stream
{
    private long read;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => read; set => throw new NotSupportedException(); }

    public override int Read(byte[] buffer, int offset, int count)
    {
        int got = inner.Read(buffer, offset, count);
        read += got;
        return read <= most ? got : throw new DxfFaultException("file", Invariant($"more than {most >> 20} MiB"), Invariant($"at most {most >> 20} MiB"));
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
