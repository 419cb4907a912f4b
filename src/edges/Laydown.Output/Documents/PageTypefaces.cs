using SkiaSharp;
using Svg.Skia.TypefaceProviders;

namespace Laydown.Output.Documents;

/// <summary>Gives drawings the typefaces of the papers.</summary>
internal sealed class PageTypefaces : ITypefaceProvider
{
    /// <inheritdoc/>
    public SKTypeface? FromFamilyName(string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle)
    {
        bool bold = fontWeight >= SKFontStyleWeight.SemiBold;
        return fontFamily.Contains("Mono", StringComparison.OrdinalIgnoreCase)
            ? bold ? PageFonts.MonoBold : PageFonts.Mono
            : bold ? PageFonts.Bold : PageFonts.Regular;
    }
}
