using SkiaSharp;

namespace Laydown.Web.Tests.Sample;

/// <summary>Small pictures for pages under test.</summary>
internal static class SamplePicture
{
    /// <summary>A flat sky over a flat sea; the second kind is the same by night.</summary>
    public static byte[] Png(int width, int height, int kind)
    {
        using SKBitmap picture = new(width, height);
        using SKCanvas canvas = new(picture);
        canvas.Clear(kind == 1 ? new SKColor(176, 205, 219) : new SKColor(18, 24, 44));
        using SKPaint sea = new() { Color = kind == 1 ? new SKColor(70, 112, 110) : new SKColor(10, 14, 22) };
        canvas.DrawRect(0, height * 0.6f, width, height, sea);
        using SKPaint light = new() { Color = kind == 1 ? new SKColor(240, 236, 214) : new SKColor(250, 244, 200), IsAntialias = true };
        canvas.DrawCircle(width * 0.7f, height * 0.35f, height * 0.12f, light);
        using SKData png = picture.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }
}
