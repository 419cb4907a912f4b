using Microsoft.Win32.SafeHandles;

namespace Laydown.Intake.Artwork;

/// <summary>Reads and writes at a place of a file, from any thread.</summary>
internal static class Positional
{
    /// <summary>Fills the span from the file at the place.</summary>
    /// <exception cref="InvalidDataException">The file ends before.</exception>
    public static void Fill(SafeFileHandle file, Span<byte> into, long place)
    {
        while (into.Length > 0)
        {
            int read = RandomAccess.Read(file, into, place);
            if (read == 0)
                throw new InvalidDataException(Invariant($"plates: a scratch file ends at byte {place}; wanted {into.Length} bytes more"));
            into = into[read..];
            place += read;
        }
    }

    /// <summary>Writes at a place of a file, from any thread.</summary>
    /// <exception cref="IOException">The disk is full, or takes no file so long.</exception>
    public static void Put(SafeFileHandle file, ReadOnlySpan<byte> bytes, long place)
    {
        try
        {
            RandomAccess.Write(file, bytes, place);
        }
        catch (ArgumentOutOfRangeException tooLong)
        {
            // So the runtime tells a file that grows beyond what the file system or the shop's limits allow.
            throw new IOException(tooLong.Message, tooLong);
        }
    }
}
