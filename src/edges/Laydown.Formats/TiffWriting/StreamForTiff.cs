using BitMiracle.LibTiff.Classic;

namespace Laydown.Formats.TiffWriting;

/// <summary>Lets the TIFF library write to any stream and keeps the first exception, which the library itself would swallow.</summary>
internal sealed class StreamForTiff(Stream stream) : TiffStream
{
    /// <summary>The first thing that went wrong in the stream.</summary>
    public Exception? Failure { get; private set; }

    /// <summary>The last complaint of the library.</summary>
    public string Complaint { get; set; } = "no reason given";

    public override int Read(object clientData, byte[] buffer, int offset, int count) =>
        Guarded(() => stream.ReadAtLeast(buffer.AsSpan(offset, count), count, throwOnEndOfStream: false));

    public override void Write(object clientData, byte[] buffer, int offset, int count) =>
        Guarded(() =>
        {
            stream.Write(buffer, offset, count);
            return count;
        });

    public override long Seek(object clientData, long offset, SeekOrigin origin) => Guarded(() => stream.Seek(offset, origin));

    // The caller owns the stream and closes it.
    public override void Close(object clientData)
    {
    }

    public override long Size(object clientData) => Guarded(() => stream.Length);

    private T Guarded<T>(Func<T> action)
    {
        try
        {
            return action();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ObjectDisposedException)
        {
            Failure ??= e;
            throw;
        }
    }
}
