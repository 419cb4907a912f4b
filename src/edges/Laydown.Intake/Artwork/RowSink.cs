namespace Laydown.Intake.Artwork;

/// <summary>A stream that is written to and hands on whole rows of bytes.</summary>
/// <remarks>What goes wrong while a row is taken is kept in <see cref="Failure"/>, as the writer on the other side may not pass it on.</remarks>
/// <param name="rowBytes">Bytes in a row.</param>
/// <param name="take">Takes a row and its number from 0.</param>
internal sealed class RowSink(int rowBytes, RowSink.TakeRow take) : Stream
{
    private readonly byte[] row = new byte[rowBytes];
    private int filled;

    /// <summary>Takes one row.</summary>
    public delegate void TakeRow(int number, ReadOnlySpan<byte> row);

    /// <summary>Rows handed on.</summary>
    public int Rows { get; private set; }

    /// <summary>What went wrong, or null.</summary>
    public Exception? Failure { get; private set; }

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (Failure is not null)
            throw new IOException("The rows before could not be taken.", Failure);

        while (!buffer.IsEmpty)
        {
            int part = Math.Min(buffer.Length, rowBytes - filled);
            buffer[..part].CopyTo(row.AsSpan(filled));
            buffer = buffer[part..];
            filled += part;
            if (filled == rowBytes)
                HandOn();
        }
    }

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    private void HandOn()
    {
        filled = 0;
        try
        {
            take(Rows++, row);
        }
        catch (Exception failure)
        {
            Failure = failure;
            throw;
        }
    }
}
