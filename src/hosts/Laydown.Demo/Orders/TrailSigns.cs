using Laydown.Demo.Art;
using Laydown.Demo.Files;
using Laydown.Formats.PdfWriting;
using Laydown.Measures;
using SkiaSharp;

namespace Laydown.Demo.Orders;

/// <summary>Signs along a trail: picture, name, number and a QR code. The third comes with the flaws that such files have.</summary>
internal static class TrailSigns
{
    private const double Width = 580;
    private const double Height = 400;

    public static void Write(string folder)
    {
        PdfFiles.Write(Path.Combine(folder, "trail-sluice.pdf"), "Trail sign 1: The old sluice", true, file =>
            file.AddPage(PdfPageSize.WithBleed(Width, Height, 5), canvas => new PicturePdf(file).Draw(canvas, Sluice(), 5, 5)));

        // Printer's notes on a layer that is switched off: to be reported, never silently printed or dropped.
        PdfLayer notes = new("Notes for the printer", null, null, Visible: false);
        PdfFiles.Write(Path.Combine(folder, "trail-hide.pdf"), "Trail sign 2: The reed hide", true, file =>
            file.AddPage(PdfPageSize.WithBleed(Width, Height, 5), canvas =>
            {
                PicturePdf pdf = new(file);
                pdf.Draw(canvas, Hide(), 5, 5);
                canvas.On(notes, () =>
                {
                    Picture note = new(Width, Height, 0);
                    note.Write("Please check the arrow with the warden before printing.", Face.Regular, 9, 40, 60, Palette.Samphire);
                    pdf.Draw(canvas, note, 5, 5);
                });
            }));

        // No bleed, colours without profile, and a postcard copied from a web page.
        PdfFiles.Write(Path.Combine(folder, "trail-pools.pdf"), "Trail sign 3: Tide pools", false, file =>
        {
            (byte[] jpeg, int width, int height) = ImageFiles.Jpeg(Postcard(), 40, 72, 80);
            file.AddPage(new PdfPageSize(new SizeMm(Width, Height), null, null), canvas =>
            {
                new PicturePdf(file).Draw(canvas, Pools(), 0, 0);
                canvas.Picture(file.AddRgbJpeg(jpeg, width, height), new RectMm(436, 196, 120, 80));
            });
        });
    }

    private static Picture Sluice()
    {
        Picture sign = Base(Light.Day, 12);
        Birds.Avocet(sign, Affine.Place(410, 158, 62));
        Birds.Avocet(sign, Affine.Place(318, 146, 40, 0, true));
        Birds.Tern(sign, Affine.Place(215, 62, 42, -9));
        Plate(sign, "1", "The old sluice", "Salt water meets fresh at this gate, twice a day.", "900 m to the reed hide", "https://saltmarsh-observatory.example/trail/1");
        return sign;
    }

    private static Picture Hide()
    {
        Picture sign = Base(Light.Day, 31);
        Birds.Tern(sign, Affine.Place(384, 116, 74, -12));
        Birds.Tern(sign, Affine.Place(210, 52, 36, 4, true));
        Birds.Tern(sign, Affine.Place(505, 46, 24, -4));
        Plate(sign, "2", "The reed hide", "Stand still, look low: the bittern is a reed that breathes.", "450 m to the tide pools", "https://saltmarsh-observatory.example/trail/2");
        return sign;
    }

    private static Picture Pools()
    {
        Picture sign = new(Width, Height, 0);
        new Estuary(sign, 0, 0, Width, 292, Light.Day, 58).Draw();
        Birds.Avocet(sign, Affine.Place(150, 150, 70));
        Plate(sign, "3", "Tide pools", "Small seas that wait six hours for the next one.", "Back to the dome: 1.2 km", "https://saltmarsh-observatory.example/trail/3");
        return sign;
    }

    private static Picture Postcard()
    {
        Picture card = new(120, 80, 0);
        new Estuary(card, 0, 0, 120, 80, Light.Day, 4).Draw();
        card.Fill(Outline.Rect(0, 0, 120, 80).And(Outline.Rect(117, 3, -114, 74)), SKColors.White);
        return card;
    }

    private static Picture Base(Light light, ulong ground)
    {
        Picture sign = new(Width, Height, 5);
        new Estuary(sign, -5, -5, Width + 10, 292, light, ground).Draw();
        return sign;
    }

    /// <summary>The lower part: number, name, a sentence, the way on, the code.</summary>
    private static void Plate(Picture sign, string number, string name, string sentence, string onward, string link)
    {
        double b = sign.BleedMm;
        sign.Fill(Outline.Rect(-b, 284, Width + (2 * b), 116 + b), Palette.Deep);
        sign.Fill(Outline.Rect(-b, 284, Width + (2 * b), 2.4), Palette.Dune);

        // The number stands in a disc on the edge between picture and plate.
        sign.Fill(Outline.Circle(66, 286, 31), Palette.Cream);
        sign.Fill(Outline.Circle(66, 286, 28), Palette.Samphire);
        sign.WriteCentred(number, Face.Black, 38, 66, 299.5, Palette.Cream);

        sign.Write(name, Face.Black, 37, 116, 333, Palette.Cream, -0.2);
        sign.Write(sentence, Face.Regular, 12.4, 116.5, 352, Palette.Water);
        Arrow(sign, 117, 369.5);
        sign.Write(onward, Face.Bold, 11, 140, 374, Palette.Dune);
        Mark.WithName(sign, 28, 22, 30, Palette.Cream);
        Codes.Qr(sign, link, 462, 292, 96);
    }

    private static void Arrow(Picture sign, double x, double y) => sign.Fill(
        new Outline().M(x, y - 1.1).L(x + 11, y - 1.1).L(x + 11, y - 4.4).L(x + 18, y).L(x + 11, y + 4.4).L(x + 11, y + 1.1).L(x, y + 1.1).Z(), Palette.Dune);
}
