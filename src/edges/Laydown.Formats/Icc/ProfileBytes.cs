using System.Security.Cryptography;

namespace Laydown.Formats.Icc;

/// <summary>Turns an open profile into bytes that are the same each time.</summary>
internal static class ProfileBytes
{
    private const int DateOffset = 24;

    // Year, month, day, hour, minute, second, big-endian: the date belongs to the format, not to the content.
    private static ReadOnlySpan<byte> FixedDate => [0x07, 0xEA, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0];

    /// <summary>The profile's bytes, with 1 January 2026 as creation date.</summary>
    internal static byte[] Save(nint profile, CmsContext context)
    {
        uint size = 0;
        if (LittleCms.SaveProfile(profile, default, ref size) == 0)
            throw new InvalidOperationException(Invariant($"Little CMS cannot save the profile: {context.Said}."));
        byte[] bytes = new byte[size];
        if (LittleCms.SaveProfile(profile, bytes, ref size) == 0)
            throw new InvalidOperationException(Invariant($"Little CMS cannot save the profile: {context.Said}."));
        FixedDate.CopyTo(bytes.AsSpan(DateOffset));
        if (bytes[8] >= 4)
            WriteId(bytes);
        return bytes;
    }

    // Flags, intent and the ID itself count as 0 in the sum. [ICC1]
    [System.Diagnostics.CodeAnalysis.SuppressMessage("Security", "CA5351", Justification = "The format names this sum; it guards nothing.")]
    private static void WriteId(byte[] bytes)
    {
        byte[] copy = [.. bytes];
        copy.AsSpan(44, 4).Clear();
        copy.AsSpan(64, 4).Clear();
        copy.AsSpan(84, 16).Clear();
        MD5.HashData(copy).CopyTo(bytes.AsSpan(84));
    }
}
