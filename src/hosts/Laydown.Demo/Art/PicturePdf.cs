using Laydown.Formats.PdfWriting;
using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>Draws pictures as PDF pages: outlines stay outlines, text stays text, only soft light becomes pixels.</summary>
internal sealed class PicturePdf(PdfFile file)
{
    private readonly Dictionary<Face, PdfFont> fonts = [];

    /// <summary>Draws the picture, its bleed included, so that its finished piece starts at <paramref name="left"/>, <paramref name="bottom"/>.</summary>
    public void Draw(PdfCanvas canvas, Picture picture, double left, double bottom)
    {
        foreach (Element element in picture.Elements)
        {
            switch (element)
            {
                case Element.Shape shape:
                    canvas.Apart(() => Draw(canvas, picture, shape, left, bottom));
                    break;
                case Element.Text text:
                    SetFill(canvas, text.Colour);
                    canvas.Glyphs(Font(text.Face), text.SizeMm, new(left + text.X, bottom + picture.HeightMm - text.Y), Type.Set(text.Words, text.Face, text.SizeMm, text.Tracking));
                    break;
                case Element.Soft soft:
                    (byte[] rgba, int width, int height) = PictureRaster.Draw(soft);
                    canvas.Picture(file.AddRgba(rgba, width, height), new(left + soft.X, bottom + picture.HeightMm - soft.Y - soft.Height, soft.Width, soft.Height));
                    break;
            }
        }
    }

    /// <summary>The embedded font of a cut of type.</summary>
    public PdfFont Font(Face face)
    {
        if (!fonts.TryGetValue(face, out PdfFont? font))
            fonts.Add(face, font = file.AddFont(Type.File(face), Type.Name(face)));
        return font;
    }

    /// <summary>Puts an outline on the page as the current path.</summary>
    public static void Trace(PdfCanvas canvas, Outline outline, double left, double top)
    {
        foreach ((char verb, double[] a) in outline.Steps)
        {
            switch (verb)
            {
                case 'M': canvas.MoveTo(left + a[0], top - a[1]); break;
                case 'L': canvas.LineTo(left + a[0], top - a[1]); break;
                case 'C': canvas.CurveTo(left + a[0], top - a[1], left + a[2], top - a[3], left + a[4], top - a[5]); break;
                default: canvas.ClosePath(); break;
            }
        }
    }

    private static void Draw(PdfCanvas canvas, Picture picture, Element.Shape shape, double left, double bottom)
    {
        double top = bottom + picture.HeightMm;
        if (shape.Opacity < 1)
            canvas.Opacity(shape.Opacity);
        Paint paint = shape.Paint;
        if (paint.IsPlain)
        {
            SetFill(canvas, paint.Stops[0].Colour);
            Trace(canvas, shape.Outline, left, top);
            canvas.Fill();
        }
        else
        {
            Trace(canvas, shape.Outline, left, top);
            canvas.Clip();
            canvas.LinearShading(new(left + paint.X0, top - paint.Y0), new(left + paint.X1, top - paint.Y1),
                [.. paint.Stops.Select(s => (s.At, s.Colour.Red / 255.0, s.Colour.Green / 255.0, s.Colour.Blue / 255.0))]);
        }
    }

    private static void SetFill(PdfCanvas canvas, SKColor colour)
    {
        // Text and codes in the ink colour go to the black plate alone, so that nothing can be out of register.
        if (colour == Paint.Ink)
            canvas.FillCmyk(0, 0, 0, 1);
        else
            canvas.FillRgb(colour.Red / 255.0, colour.Green / 255.0, colour.Blue / 255.0);
    }
}
