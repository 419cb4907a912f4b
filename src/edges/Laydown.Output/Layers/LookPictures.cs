using Laydown.Formats.Icc;
using Laydown.Measures;
using Laydown.Output.Documents;
using Laydown.Shop.Colour;
using Laydown.Shop.Layers;
using SkiaSharp;

namespace Laydown.Output.Layers;

/// <summary>Pictures of looks as PNG that carry their colour space.</summary>
public sealed class LookPictures : ILookPictures
{
    private const int KeyPx = 18;
    private const int MarginPx = 12;
    private const int LeastWidthPx = 520;

    /// <inheritdoc/>
    public byte[] Png(RgbPicture picture)
    {
        using SKBitmap bitmap = Bitmap(picture, SKColorSpace.CreateSrgb());
        return Encoded(bitmap);
    }

    /// <inheritdoc/>
    public Reading<byte[]> PngIn(int width, IReadOnlyList<double> lab, string profileName, byte[] profile) =>
        IccProfile.Read(profileName, profile).Then(target => target.Space == IccSpace.Rgb
            ? IccTransform.Precise(IccProfile.Lab, target, IccIntent.RelativeColorimetric, blackPoint: true).Then(transform =>
            {
                using (transform)
                {
                    double[] rgb = new double[lab.Count];
                    transform.Row([.. lab], rgb);
                    RgbPicture picture = new(width, lab.Count / 3 / width, [.. rgb.Select(v => (byte)Math.Round(255 * Math.Clamp(v, 0, 1)))]);
                    using SKBitmap bitmap = Bitmap(picture, null);
                    return Reading.Of(PngChunks.WithProfile(Encoded(bitmap), profile));
                }
            })
            : Reading.Refused<byte[]>(new InputFault(profileName, null, "ICC profile", Invariant($"colour space {target.Space}"), "a profile for RGB")));

    /// <inheritdoc/>
    public byte[] Map(RgbPicture picture, string title, IReadOnlyList<MapKey> keys)
    {
        int width = Math.Max(LeastWidthPx, picture.Width + (2 * MarginPx));
        int height = picture.Height + (2 * MarginPx) + ((keys.Count + 1) * (KeyPx + 6)) + MarginPx;
        using SKBitmap whole = new(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb()));
        using SKBitmap map = Bitmap(picture, SKColorSpace.CreateSrgb());
        using (SKCanvas canvas = new(whole))
        {
            canvas.Clear(SKColors.White);
            using (SKImage drawn = SKImage.FromBitmap(map))
                canvas.DrawImage(drawn, MarginPx, MarginPx, SKSamplingOptions.Default);
            using SKPaint paint = new() { IsAntialias = true };
            float y = picture.Height + (2 * MarginPx);
            Write(canvas, PageFonts.Bold, title, MarginPx, y, paint);
            foreach (MapKey key in keys)
            {
                y += KeyPx + 6;
                paint.Color = new(key.Red, key.Green, key.Blue);
                canvas.DrawRect(MarginPx, y, KeyPx, KeyPx, paint);
                Write(canvas, PageFonts.Regular, key.Words, MarginPx + KeyPx + 8, y, paint);
            }
        }

        return Encoded(whole);
    }

    private static void Write(SKCanvas canvas, SKTypeface face, string words, float x, float y, SKPaint paint)
    {
        paint.Color = SKColors.Black;
        foreach ((SKTypeface piece, string text) in PageFonts.Pieces(face, words))
        {
            using SKFont font = new(piece, KeyPx * 0.8f);
            canvas.DrawText(text, x, y + (KeyPx * 0.8f), SKTextAlign.Left, font, paint);
            x += font.MeasureText(text);
        }
    }

    private static SKBitmap Bitmap(RgbPicture picture, SKColorSpace? space)
    {
        SKBitmap bitmap = new(new SKImageInfo(picture.Width, picture.Height, SKColorType.Rgba8888, SKAlphaType.Opaque, space));
        Span<byte> target = bitmap.GetPixelSpan();
        for (int row = 0; row < picture.Height; row++)
        {
            Span<byte> line = target.Slice(row * bitmap.RowBytes, picture.Width * 4);
            ReadOnlySpan<byte> from = picture.Pixels.AsSpan(row * picture.Width * 3, picture.Width * 3);
            for (int x = 0; x < picture.Width; x++)
            {
                from.Slice(x * 3, 3).CopyTo(line[(x * 4)..]);
                line[(x * 4) + 3] = 255;
            }
        }

        return bitmap;
    }

    private static byte[] Encoded(SKBitmap bitmap)
    {
        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
