using Laydown.Measures;
using Laydown.Shop.Colour;
using SkiaSharp;

namespace Laydown.Output.Colour;

/// <summary>Pictures for the screen as PNG.</summary>
public sealed class ScreenPictures : IScreenPictures
{
    /// <inheritdoc/>
    public Reading<RgbPicture> Read(string pngPath, int maxSidePx)
    {
        using SKBitmap? whole = SKBitmap.Decode(pngPath);
        if (whole is null)
            return Reading.Refused<RgbPicture>(new InputFault(Path.GetFileName(pngPath), null, "picture", "nothing that can be decoded", "a PNG"));
        double scale = Math.Min(1, maxSidePx / (double)Math.Max(whole.Width, whole.Height));
        SKImageInfo info = new(
            Math.Max(1, (int)(whole.Width * scale)), Math.Max(1, (int)(whole.Height * scale)), SKColorType.Rgba8888, SKAlphaType.Opaque);
        using SKBitmap small = new(info);
        using (SKCanvas canvas = new(small))
        using (SKImage image = SKImage.FromBitmap(whole))
        {
            canvas.Clear(SKColors.White);
            canvas.DrawImage(image, new SKRect(0, 0, info.Width, info.Height), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        }

        ReadOnlySpan<byte> pixels = small.GetPixelSpan();
        byte[] rgb = new byte[3 * info.Width * info.Height];
        for (int row = 0, to = 0; row < info.Height; row++)
        {
            for (int from = row * small.RowBytes; from < (row * small.RowBytes) + (4 * info.Width); from += 4, to += 3)
                pixels.Slice(from, 3).CopyTo(rgb.AsSpan(to));
        }

        return Reading.Of(new RgbPicture(info.Width, info.Height, rgb));
    }

    /// <inheritdoc/>
    public byte[] Png(RgbPicture picture)
    {
        byte[] pixels = new byte[4 * picture.Width * picture.Height];
        for (int pixel = 0; pixel < picture.Width * picture.Height; pixel++)
        {
            picture.Pixels.AsSpan(3 * pixel, 3).CopyTo(pixels.AsSpan(4 * pixel));
            pixels[(4 * pixel) + 3] = 255;
        }

        using SKData data = SKData.CreateCopy(pixels);
        using SKImage image = SKImage.FromPixels(new SKImageInfo(picture.Width, picture.Height, SKColorType.Rgba8888, SKAlphaType.Opaque), data, 4 * picture.Width);
        using SKData png = image.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }
}
