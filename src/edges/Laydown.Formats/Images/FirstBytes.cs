using System.Text;
using Laydown.Artwork.Pages;

namespace Laydown.Formats.Images;

/// <summary>Tells a file's format from its first bytes, never from its name.</summary>
public static class FirstBytes
{
    /// <summary>How many bytes from the start of a file are enough.</summary>
    public const int Length = 4096;

    private static readonly byte[] PngMark = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>The format, or null where it is none the shop takes.</summary>
    /// <param name="start">The first bytes, up to <see cref="Length"/>.</param>
    public static ArtworkKind? Kind(ReadOnlySpan<byte> start)
    {
        if (start.StartsWith(PngMark))
            return ArtworkKind.Png;
        if (start.Length >= 3 && start[0] == 0xFF && start[1] == 0xD8 && start[2] == 0xFF)
            return ArtworkKind.Jpeg;
        if (IsTiff(start))
            return ArtworkKind.Tiff;

        // Some programs put a few bytes before the PDF mark; readers look for it in the first 1024.
        if (start[..Math.Min(1024, start.Length)].IndexOf("%PDF-"u8) >= 0)
            return ArtworkKind.Pdf;
        return IsSvg(start) ? ArtworkKind.Svg : null;
    }

    /// <summary>The format a file name promises by its extension, or null where it promises none of ours.</summary>
    public static ArtworkKind? Promised(string fileName) => Path.GetExtension(fileName).ToUpperInvariant() switch
    {
        ".PDF" => ArtworkKind.Pdf,
        ".TIF" or ".TIFF" or ".BTF" => ArtworkKind.Tiff,
        ".PNG" => ArtworkKind.Png,
        ".JPG" or ".JPEG" => ArtworkKind.Jpeg,
        ".SVG" => ArtworkKind.Svg,
        _ => null,
    };

    private static bool IsTiff(ReadOnlySpan<byte> start) =>
        start.StartsWith("II*\0"u8) || start.StartsWith("MM\0*"u8) || start.StartsWith("II+\0"u8) || start.StartsWith("MM\0+"u8);

    private static bool IsSvg(ReadOnlySpan<byte> start)
    {
        if (start is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
            return (start[0] == 0xFF ? Encoding.Unicode : Encoding.BigEndianUnicode).GetString(start).Contains("<svg", StringComparison.Ordinal);

        // XML starts with a tag, after a byte order mark and blanks at most.
        ReadOnlySpan<byte> text = start is [0xEF, 0xBB, 0xBF, ..] ? start[3..] : start;
        text = text.TrimStart(" \t\r\n"u8);
        return text.StartsWith("<"u8) && text.IndexOf("<svg"u8) >= 0;
    }
}
