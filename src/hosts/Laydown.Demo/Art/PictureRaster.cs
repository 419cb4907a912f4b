using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>Draws pictures into pixels.</summary>
internal static class PictureRaster
{
    /// <summary>The picture with its bleed at a resolution; transparent where nothing is drawn.</summary>
    public static SKBitmap Draw(Picture picture, double ppi, SKColorSpace? space)
    {
        double perMm = ppi / 25.4;
        int width = (int)Math.Round((picture.WidthMm + (2 * picture.BleedMm)) * perMm);
        int height = (int)Math.Round((picture.HeightMm + (2 * picture.BleedMm)) * perMm);
        SKBitmap bitmap = new(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul, space));
        using SKCanvas canvas = new(bitmap);
        canvas.Clear(SKColors.Transparent);
        canvas.Scale((float)perMm);
        canvas.Translate((float)picture.BleedMm, (float)picture.BleedMm);
        foreach (Element element in picture.Elements)
            Draw(canvas, element);
        return bitmap;
    }

    /// <summary>One soft element alone, as pixels of straight (not premultiplied) red, green, blue, alpha.</summary>
    public static (byte[] Rgba, int Width, int Height) Draw(Element.Soft soft)
    {
        double perMm = soft.Ppi / 25.4;
        int width = Math.Max(1, (int)Math.Round(soft.Width * perMm));
        int height = Math.Max(1, (int)Math.Round(soft.Height * perMm));
        using SKBitmap bitmap = new(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Clear(SKColors.Transparent);
            canvas.Scale((float)(width / soft.Width), (float)(height / soft.Height));
            canvas.Translate((float)-soft.X, (float)-soft.Y);
            soft.Draw(canvas);
        }

        return (Straight(bitmap.Bytes), width, height);
    }

    /// <summary>Takes the multiplication by alpha out of pixels.</summary>
    public static byte[] Straight(byte[] rgba)
    {
        for (int i = 0; i < rgba.Length; i += 4)
        {
            int a = rgba[i + 3];
            if (a is 0 or 255)
                continue;
            for (int c = 0; c < 3; c++)
                rgba[i + c] = (byte)Math.Min(255, ((rgba[i + c] * 255) + (a / 2)) / a);
        }

        return rgba;
    }

    private static void Draw(SKCanvas canvas, Element element)
    {
        switch (element)
        {
            case Element.Shape shape:
                using (SKPaint paint = Brush(shape.Paint, shape.Opacity))
                using (SKPath path = shape.Outline.ToSkia())
                    canvas.DrawPath(path, paint);
                break;
            case Element.Text text:
                using (SKPaint paint = Brush(text.Colour, 1))
                using (SKPath path = Type.Outlines(text).ToSkia())
                    canvas.DrawPath(path, paint);
                break;
            case Element.Soft soft:
                canvas.Save();
                canvas.ClipRect(SKRect.Create((float)soft.X, (float)soft.Y, (float)soft.Width, (float)soft.Height));
                soft.Draw(canvas);
                canvas.Restore();
                break;
        }
    }

    private static SKPaint Brush(Paint paint, double opacity)
    {
        SKPaint brush = new() { IsAntialias = true, IsDither = true };
        byte alpha = (byte)Math.Round(255 * opacity);
        if (paint.IsPlain)
        {
            brush.Color = paint.Stops[0].Colour.WithAlpha((byte)(paint.Stops[0].Colour.Alpha * opacity));
        }
        else
        {
            brush.Color = SKColors.Black.WithAlpha(alpha);
            brush.Shader = SKShader.CreateLinearGradient(
                new SKPoint((float)paint.X0, (float)paint.Y0), new SKPoint((float)paint.X1, (float)paint.Y1),
                [.. paint.Stops.Select(s => s.Colour)], [.. paint.Stops.Select(s => (float)s.At)], SKShaderTileMode.Clamp);
        }

        return brush;
    }
}
