using System.Xml.Linq;
using Laydown.Measures;
using SkiaSharp;
using Svg.Skia;

namespace Laydown.Formats.Svg;

/// <summary>An SVG that is safe to draw, at its size in mm.</summary>
public sealed class SvgPage : IDisposable
{
    /// <summary>Millimetres of one unit of the drawing as it is held here.</summary>
    public const double MmPerUnit = 25.4 / 96;

    private readonly SKSvg drawing;

    private SvgPage(SKSvg drawing, SizeMm size)
    {
        this.drawing = drawing;
        Size = size;
    }

    /// <summary>Size as the file says it.</summary>
    public SizeMm Size { get; }

    /// <summary>What is drawn, as a list of commands.</summary>
    internal ShimSkiaSharp.SKPicture Model => drawing.Model!;

    /// <summary>The drawing in a file, or why it cannot be taken.</summary>
    public static Reading<SvgPage> Load(string path, SvgLimits limits)
    {
        string file = Path.GetFileName(path);
        using var stream = File.OpenRead(path);
        return new SvgCleaning(file, limits).Load(stream).Then(document => Sized(document, file, limits));
    }

    /// <summary>Draws a band of the page: rows × columns × red, green, blue, alpha, 8 bits each, colour not multiplied by alpha.</summary>
    /// <param name="widthPx">Width of the whole page, pixels.</param>
    /// <param name="heightPx">Height of the whole page, pixels.</param>
    /// <param name="topPx">First row of the band.</param>
    /// <param name="rows">Rows of the band.</param>
    public byte[] Band(int widthPx, int heightPx, int topPx, int rows)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(widthPx, rows, SKColorType.Rgba8888, SKAlphaType.Premul));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.Transparent);
            canvas.Translate(0, -topPx);
            canvas.Scale((float)(widthPx / Size.WidthMm * MmPerUnit), (float)(heightPx / Size.HeightMm * MmPerUnit));
            canvas.DrawPicture(drawing.Picture);
        }

        byte[] pixels = new byte[4L * widthPx * rows];
        var plain = new SKImageInfo(widthPx, rows, SKColorType.Rgba8888, SKAlphaType.Unpremul);
        using var pixmap = bitmap.PeekPixels();
        unsafe
        {
            fixed (byte* target = pixels)
                return pixmap.ReadPixels(plain, (nint)target, widthPx * 4) ? pixels : throw new InvalidOperationException("Pixels could not be read back.");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => drawing.Dispose();

    private static Reading<SvgPage> Sized(XDocument document, string file, SvgLimits limits)
    {
        var root = document.Root!;
        double[]? box = SvgLength.ViewBox((string?)root.Attribute("viewBox"));
        double? width = SvgLength.Mm((string?)root.Attribute("width")), height = SvgLength.Mm((string?)root.Attribute("height"));

        // One side alone takes the other from the view box; none takes both, one unit being 1/96 inch.
        double? widthMm = width ?? (box is null ? null : height is null ? box[2] * MmPerUnit : height * box[2] / box[3]);
        double? heightMm = height ?? (box is null ? null : width is null ? box[3] * MmPerUnit : width * box[3] / box[2]);
        if (widthMm is null || heightMm is null)
            return Reading.Refused<SvgPage>(new InputFault(file, null, "width, height, viewBox", "no size", "a width and height with units, or a viewBox"));
        if (Math.Max(widthMm.Value, heightMm.Value) > limits.SideMm)
            return Reading.Refused<SvgPage>(new InputFault(file, null, "width, height", Invariant($"{Math.Max(widthMm.Value, heightMm.Value):0} mm"), Invariant($"at most {limits.SideMm:0} mm a side")));

        if (box is null)
            root.SetAttributeValue("viewBox", Invariant($"0 0 {widthMm / MmPerUnit} {heightMm / MmPerUnit}"));
        root.SetAttributeValue("width", Invariant($"{widthMm / MmPerUnit}"));
        root.SetAttributeValue("height", Invariant($"{heightMm / MmPerUnit}"));
        return Drawn(document, file, new SizeMm(widthMm.Value, heightMm.Value));
    }

    private static Reading<SvgPage> Drawn(XDocument document, string file, SizeMm size)
    {
        var drawing = new SKSvg();
        drawing.Settings.TypefaceProviders?.Clear();
        drawing.Settings.TypefaceProviders?.Add(new ShopFonts());
        drawing.Settings.EnableJavaScript = false;
        drawing.Settings.EnableExternalJavaScript = false;
        try
        {
            using var reader = document.CreateReader();
            if (drawing.Load(reader) is not null && drawing.Model is not null)
                return Reading.Of(new SvgPage(drawing, size));
        }
        catch (Exception damage) when (damage is not OutOfMemoryException)
        {
            // The drawing library throws many kinds on odd files; each means the same to the customer.
            drawing.Dispose();
            return Reading.Refused<SvgPage>(new InputFault(file, null, "SVG content", damage.Message.ReplaceLineEndings(" "), "a drawing that can be read"));
        }

        drawing.Dispose();
        return Reading.Refused<SvgPage>(new InputFault(file, null, "SVG content", "nothing that can be drawn", "a drawing"));
    }
}
