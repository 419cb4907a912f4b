using System.Text;

namespace Laydown.Formats.Patches;

/// <summary>Bytes of a text file of unknown encoding, as characters and lines.</summary>
internal static class FileText
{
    private static readonly UTF8Encoding Strict = new(false, throwOnInvalidBytes: true);

    /// <summary>The text: by its byte-order mark, else UTF-8 where the bytes are valid, else Latin-1; null for what is no text.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return Whole(Encoding.Unicode.GetString(bytes[2..]));
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return Whole(Encoding.BigEndianUnicode.GetString(bytes[2..]));

        ReadOnlySpan<byte> rest = bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes[3..] : bytes;
        try
        {
            return Whole(Strict.GetString(rest));
        }
        catch (DecoderFallbackException)
        {
            return Whole(Encoding.Latin1.GetString(rest));
        }
    }

    /// <summary>Lines that end in CR, LF or both, each with its number from 1.</summary>
    public static IEnumerable<(int Number, string Text)> Lines(string text)
    {
        int number = 1;
        for (int start = 0; start <= text.Length; number++)
        {
            int end = text.AsSpan(start).IndexOfAny('\r', '\n');
            end = end < 0 ? text.Length : start + end;
            yield return (number, text[start..end]);
            start = end + (end + 1 < text.Length && text[end] == '\r' && text[end + 1] == '\n' ? 2 : 1);
        }
    }

    // Some programs write the zero that ends a text in memory; within a text it is no character.
    private static string? Whole(string text) => text.TrimEnd('\0') is var whole && whole.Contains('\0', StringComparison.Ordinal) ? null : whole;
}
