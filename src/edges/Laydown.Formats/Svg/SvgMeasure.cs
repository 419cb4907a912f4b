using Laydown.Artwork.Pages;
using Laydown.Measures;
using ShimSkiaSharp;

namespace Laydown.Formats.Svg;

/// <summary>Measures an SVG from the commands that draw it, styles and transforms already worked in.</summary>
/// <remarks>Its colours are sRGB. Classes and layers named in it are no separations: SVG has none. A font counts as embedded where the shop has it.</remarks>
public static class SvgMeasure
{
    private const int Most = 20;

    /// <summary>The one page of the drawing.</summary>
    public static ArtworkPage Page(SvgPage page)
    {
        var notes = new Notes(page.Size.HeightMm, page.MmPerUnit);
        notes.Walk(page.Model, SKMatrix.Identity, 0);
        var whole = new RectMm(0, 0, page.Size.WidthMm, page.Size.HeightMm);
        return new(
            1, 1, page.Size, whole, whole, HasTrimBox: false, 0, 0, ["DeviceRGB"], "sRGB", HasAlpha: true, notes.Transparency, Overprint: false, [],
            notes.Images, [.. notes.Fonts.Select(f => new FontUse(f, "SVG text", ShopFonts.Has(f)))], [],
            [.. notes.Texts.Values.OrderBy(t => t.SizePt).Take(Most)], notes.Lines.Kept, [], null, null, []);
    }

    private sealed class Notes(double heightMm, double mmPerUnit)
    {
        private const int Deepest = 64;

        public List<PlacedImage> Images { get; } = [];

        public SortedSet<string> Fonts { get; } = new(StringComparer.Ordinal);

        public Dictionary<double, TextUse> Texts { get; } = [];

        public Pdf.ThinnestLines Lines { get; } = new();

        public bool Transparency { get; private set; }

        public void Walk(SKPicture picture, SKMatrix outer, int depth)
        {
            var saved = new Stack<SKMatrix>();
            var matrix = outer;
            foreach (var command in picture.Commands ?? [])
            {
                switch (command)
                {
                    case SaveCanvasCommand:
                        saved.Push(matrix);
                        break;
                    case SaveLayerCanvasCommand:
                        saved.Push(matrix);
                        Transparency = true;
                        break;
                    case RestoreCanvasCommand:
                        matrix = saved.TryPop(out var before) ? before : outer;
                        break;
                    case SetMatrixCanvasCommand set:
                        matrix = outer.PreConcat(set.TotalMatrix);
                        break;
                    case DrawPictureCanvasCommand { Picture: not null } inner when depth < Deepest:
                        Walk(inner.Picture, matrix, depth + 1);
                        break;
                    default:
                        Draw(command, matrix);
                        break;
                }
            }
        }

        private void Draw(CanvasCommand command, SKMatrix matrix)
        {
            switch (command)
            {
                case DrawPathCanvasCommand { Path: not null, Paint: not null } path:
                    Path(path.Path, path.Paint, matrix);
                    break;
                case DrawTextCanvasCommand { Paint: not null } text:
                    Text(text.Text, text.X, text.Y, text.Paint, text.Font, matrix);
                    break;
                case DrawTextOnPathCanvasCommand { Paint: not null, Path: not null } text:
                    Text(text.Text, text.Path.Bounds.Left, text.Path.Bounds.Bottom, text.Paint, text.Font, matrix);
                    break;
                case DrawPositionedTextRunCanvasCommand { Paint: not null, Fragments.Count: > 0 } run:
                    Text(string.Concat(run.Fragments.Select(f => f.Text)), run.Fragments[0].Point.X, run.Fragments[0].Point.Y, run.Paint, run.Font, matrix);
                    break;
                case DrawTextBlobCanvasCommand { Paint: not null, TextBlob: not null } blob:
                    Text(blob.TextBlob.Text ?? "", blob.X, blob.Y, blob.Paint, null, matrix);
                    break;
                case DrawImageCanvasCommand { Image: not null } image:
                    Image(image, matrix);
                    break;
            }
        }

        private void Path(SKPath path, SKPaint paint, SKMatrix matrix)
        {
            Translucent(paint);
            if (paint.Style == SKPaintStyle.Fill || path.IsEmpty)
                return;

            double width = paint.StrokeWidth * (paint.IsStrokeNonScaling ? 1 : LeastStretch(matrix)) * mmPerUnit;
            Lines.Add(width, () => Place(matrix.MapRect(path.Bounds)));
        }

        private void Text(string text, float x, float y, SKPaint paint, SKFont? font, SKMatrix matrix)
        {
            Translucent(paint);
            if (string.IsNullOrWhiteSpace(text))
                return;

            float size = font is { Size: > 0 } ? font.Size : paint.TextSize;
            var face = font?.Typeface ?? paint.Typeface;
            string family = face?.FamilyName ?? "no family named";
            Fonts.Add(family.Split(',')[0].Trim().Trim('\'', '"'));
            double pt = size * LeastStretch(matrix) * mmPerUnit / 25.4 * 72;
            double key = Math.Round(pt, 1);
            if (Texts.ContainsKey(key))
                return;

            using var drawn = new SkiaSharp.SKFont(ShopFonts.Face(family, (int)(face?.FontWeight ?? SKFontStyleWeight.Normal), false), size);
            float width = drawn.MeasureText(text);
            float left = (font is null ? paint.TextAlign : SKTextAlign.Left) switch { SKTextAlign.Center => x - (width / 2), SKTextAlign.Right => x - width, _ => x };
            var place = matrix.MapRect(new SKRect(left, y - size, left + width, y + (size / 4)));
            Texts[key] = new TextUse(pt, text.Length > 24 ? text[..24] : text, Place(place));
        }

        private void Image(DrawImageCanvasCommand command, SKMatrix matrix)
        {
            var image = command.Image!;
            double across = Math.Sqrt((matrix.ScaleX * matrix.ScaleX) + (matrix.SkewY * matrix.SkewY)) * command.Dest.Width * mmPerUnit;
            double down = Math.Sqrt((matrix.SkewX * matrix.SkewX) + (matrix.ScaleY * matrix.ScaleY)) * command.Dest.Height * mmPerUnit;
            double ppi = Math.Min(image.Width * 25.4 / Math.Max(across, 1e-9), image.Height * 25.4 / Math.Max(down, 1e-9));
            Images.Add(new PlacedImage((int)image.Width, (int)image.Height, Place(matrix.MapRect(command.Dest)), ppi, "DeviceRGB", 8, DeclaredPpi: null));
        }

        private void Translucent(SKPaint paint) => Transparency |= paint.Color is { Alpha: < 255 } && paint.Shader is null;

        private RectMm Place(SKRect r)
        {
            return new(r.Left * mmPerUnit, heightMm - (r.Bottom * mmPerUnit), Math.Max(0, r.Width * mmPerUnit), Math.Max(0, r.Height * mmPerUnit));
        }

        private static double LeastStretch(SKMatrix m) => new Pdf.Affine(m.ScaleX, m.SkewY, m.SkewX, m.ScaleY, 0, 0).LeastStretch;
    }
}
