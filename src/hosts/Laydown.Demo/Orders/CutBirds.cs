using Laydown.Demo.Art;
using Laydown.Demo.Files;
using Laydown.Formats.PdfWriting;
using SkiaSharp;

namespace Laydown.Demo.Orders;

/// <summary>Birds to hang, cut along their contour: white choked under the colour, the cut as a stroke in its own separation.</summary>
internal static class CutBirds
{
    private const double CutAwayMm = 4;
    private const double WhiteChokeMm = 0.4;

    public static void Write(string folder)
    {
        Write(Path.Combine(folder, "hanging-tern.pdf"), "Hanging tern", 380, 280, Affine.Place(230, 216, 150, -6), Birds.TernParts, p => Birds.Tern(p, Affine.Place(230, 216, 150, -6)));
        Write(Path.Combine(folder, "hanging-avocet.pdf"), "Hanging avocet", 300, 300, Affine.Place(132, 146, 128), Birds.AvocetParts, p => Birds.Avocet(p, Affine.Place(132, 146, 128)));
    }

    /// <summary>A small tern for stickers on white film: the same contour, no white under it.</summary>
    public static void Sticker(string folder) =>
        Write(Path.Combine(folder, "sticker-tern.pdf"), "Sticker, tern", 160, 120, Affine.Place(96, 92, 56, -6), Birds.TernParts, p => Birds.Tern(p, Affine.Place(96, 92, 56, -6)), withWhite: false);

    private static void Write(
        string path, string title, double width, double height, Affine place, Func<Affine, IReadOnlyList<Outline>> parts, Action<Picture> draw, bool withWhite = true)
    {
        using SKPath bird = Together(parts(place));
        using SKPath body = Grown(bird, 1.2);
        Outline white = Outline.Of(Shrunk(body, WhiteChokeMm));
        Outline cut = Smooth(bird);

        PdfFiles.Write(path, title, true, file => file.AddPage(PdfPageSize.WithBleed(width, height, 0), canvas =>
        {
            // A thin cream edge holds the bird together where leg or bill is thin; white lies under all of it, a little smaller.
            Picture picture = new(width, height, 0);
            picture.Fill(Outline.Of(body), Palette.Cream);
            draw(picture);
            if (withWhite)
                White(canvas, white, height);
            canvas.Apart(() =>
            {
                canvas.Overprint(true);
                new PicturePdf(file).Draw(canvas, picture, 0, 0);
            });
            canvas.On(PdfFiles.CutLayer, () => canvas.Apart(() =>
            {
                canvas.Overprint(true);
                canvas.LineWidth(0.25);
                canvas.StrokeSpot(PdfFiles.Cut, 1);
                PicturePdf.Trace(canvas, cut, 0, height);
                canvas.Stroke();
            }));
        }));
    }

    private static void White(PdfCanvas canvas, Outline white, double height) => canvas.On(PdfFiles.WhiteLayer, () => canvas.Apart(() =>
    {
        canvas.Overprint(true);
        canvas.FillSpot(PdfFiles.White, 1);
        PicturePdf.Trace(canvas, white, 0, height);
        canvas.Fill();
    }));

    private static SKPath Together(IReadOnlyList<Outline> parts)
    {
        SKPath all = parts[0].ToSkia();
        foreach (Outline part in parts.Skip(1))
        {
            using SKPath next = part.ToSkia();
            SKPath joined = all.Op(next, SKPathOp.Union) ?? throw new InvalidOperationException("Outlines were not joined.");
            all.Dispose();
            all = joined;
        }

        return all;
    }

    private static SKPath Grown(SKPath path, double byMm)
    {
        using SKPath rim = Rim(path, byMm);
        return path.Op(rim, SKPathOp.Union) ?? throw new InvalidOperationException("Outline did not grow.");
    }

    private static SKPath Shrunk(SKPath path, double byMm)
    {
        using SKPath rim = Rim(path, byMm);
        return path.Op(rim, SKPathOp.Difference) ?? throw new InvalidOperationException("Outline did not shrink.");
    }

    private static SKPath Rim(SKPath path, double byMm)
    {
        using SKPaint pen = new() { Style = SKPaintStyle.Stroke, StrokeWidth = (float)(2 * byMm), StrokeJoin = SKStrokeJoin.Round, StrokeCap = SKStrokeCap.Round };
        return pen.GetFillPath(path) ?? throw new InvalidOperationException("Outline has no rim.");
    }

    /// <summary>The outermost line around the bird, without notches that a blade cannot follow: grown far, then taken back.</summary>
    private static Outline Smooth(SKPath bird)
    {
        using SKPath far = Grown(bird, CutAwayMm + 9);
        using SKPath back = Shrunk(far, 9);
        List<Outline> parts = Parts(Outline.Of(back));
        return parts.MaxBy(Area)!;
    }

    private static List<Outline> Parts(Outline outline)
    {
        List<Outline> parts = [];
        foreach ((char verb, double[] a) in outline.Steps)
        {
            switch (verb)
            {
                case 'M': parts.Add(new Outline().M(a[0], a[1])); break;
                case 'L': parts[^1].L(a[0], a[1]); break;
                case 'C': parts[^1].C(a[0], a[1], a[2], a[3], a[4], a[5]); break;
                default: parts[^1].Z(); break;
            }
        }

        return parts;
    }

    private static double Area(Outline outline)
    {
        using SKPath path = outline.ToSkia();
        return path.Bounds.Width * path.Bounds.Height;
    }
}
