using Microsoft.Win32.SafeHandles;

namespace Laydown.Formats.TiffWriting;

/// <summary>Reads from a place in a file until all is read: one call may give less.</summary>
internal static class FileBytes
{
    /// <summary>Fills <paramref name="into"/>, or tells that the file ends before.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static bool TryRead(SafeFileHandle file, Span<byte> into, long offset)
    {
        while (into.Length > 0)
        {
            int read = RandomAccess.Read(file, into, offset);
            if (read == 0)
                return false;
            into = into[read..];
            offset += read;
        }

        return true;
    }
}
