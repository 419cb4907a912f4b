using System.Xml.Linq;
using Laydown.Measures;
using SkiaSharp;
using Svg.Skia;

namespace Laydown.Formats.Svg;

/// <summary>An SVG that is safe to draw, at its size in mm.</summary>
public sealed class SvgPage : IDisposable
{
    // A unit of SVG without a name is 1/96 inch.
    private const double MmPerPixel = 25.4 / 96;

    // The drawing library rounds the page to whole units: so many that the rounding is lost in a device dot.
    private const double UnitsOfLongerSide = 20_000;

    private readonly SKSvg drawing;

    private SvgPage(SKSvg drawing, SizeMm size)
    {
        this.drawing = drawing;
        Size = size;
    }

    /// <summary>Size as the file says it.</summary>
    public SizeMm Size { get; }

    /// <summary>Millimetres of one unit of <see cref="Model"/>.</summary>
    internal double MmPerUnit => Size.WidthMm / Model.CullRect.Width;

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
            canvas.Scale(widthPx / Model.CullRect.Width, heightPx / Model.CullRect.Height);
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
        double? widthMm = width ?? (box is null ? null : height is null ? box[2] * MmPerPixel : height * box[2] / box[3]);
        double? heightMm = height ?? (box is null ? null : width is null ? box[3] * MmPerPixel : width * box[3] / box[2]);
        if (widthMm is null || heightMm is null)
            return Reading.Refused<SvgPage>(new InputFault(file, null, "width, height, viewBox", "no size", "a width and height with units, or a viewBox"));
        if (Math.Max(widthMm.Value, heightMm.Value) > limits.SideMm)
            return Reading.Refused<SvgPage>(new InputFault(file, null, "width, height", Invariant($"{Math.Max(widthMm.Value, heightMm.Value):0} mm"), Invariant($"at most {limits.SideMm:0} mm a side")));

        if (box is null)
            root.SetAttributeValue("viewBox", Invariant($"0 0 {widthMm / MmPerPixel} {heightMm / MmPerPixel}"));
        double units = UnitsOfLongerSide / Math.Max(widthMm.Value, heightMm.Value);
        root.SetAttributeValue("width", Invariant($"{widthMm * units}"));
        root.SetAttributeValue("height", Invariant($"{heightMm * units}"));
        KeepStrokes(document, units * MmPerPixel);
        return Drawn(document, file, new SizeMm(widthMm.Value, heightMm.Value));
    }

    /// <summary>Strokes that do not scale keep their width on paper, as the page has more units than the file says.</summary>
    private static void KeepStrokes(XDocument document, double factor)
    {
        foreach (var element in document.Descendants().Where(e => (string?)e.Attribute("vector-effect") == "non-scaling-stroke"))
        {
            string? width = element.AncestorsAndSelf().Select(e => (string?)e.Attribute("stroke-width")).FirstOrDefault(w => w is not null);
            double mm = SvgLength.Mm(width) ?? MmPerPixel;
            element.SetAttributeValue("stroke-width", Invariant($"{mm / MmPerPixel * factor}"));
        }
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
