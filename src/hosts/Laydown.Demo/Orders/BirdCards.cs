using Laydown.Demo.Art;
using Laydown.Demo.Files;
using SkiaSharp;

namespace Laydown.Demo.Orders;

/// <summary>Cards for blanks of 480 × 640 mm: an avocet as PNG with alpha, a tern as TIFF with profile; a small one for blanks of 300 × 400 mm.</summary>
internal static class BirdCards
{
    private const double Width = 480;
    private const double Height = 640;
    private const double Ppi = 110;

    public static void Write(string folder)
    {
        ImageFiles.Png(Path.Combine(folder, "card-avocet.png"), Avocet(), Ppi);
        ImageFiles.Png(Path.Combine(folder, "card-flock.png"), Flock(), Ppi);
        ImageFiles.RgbTiff(Path.Combine(folder, "card-tern.tif"), Tern(), Ppi, DemoFiles.Resource("sRGB2014.icc"));
    }

    /// <summary>An arched window; outside it nothing is drawn, so the board shows.</summary>
    private static Picture Avocet()
    {
        Picture card = new(Width, Height, 0);
        Outline arch = new Outline().M(30, 470).L(30, 240).C(30, 114, 124, 30, 240, 30).C(356, 30, 450, 114, 450, 240).L(450, 470).Z();
        card.Fill(arch, Paint.Down(30, 470, Palette.Dune, Palette.Sand, Palette.Cream));
        card.Fill(Outline.Circle(268, 218, 118), new SKColor(0xFF, 0xF6, 0xDC), 0.85);
        Shallows(card, 372, Palette.Water, new SKColor(0x7F, 0xB4, 0xBB));
        Birds.Avocet(card, Affine.Place(226, 292, 158));
        Caption(card, "Avocet", "Recurvirostra avosetta", "Sweeps its bill from side to side", "and feels what it cannot see.", Palette.Deep, Palette.Samphire);
        return card;
    }

    private static Picture Flock()
    {
        Picture card = new(300, 400, 0);
        card.Fill(card.Whole, Paint.Down(0, 400, Palette.Estuary, Palette.Sand, Palette.Cream));
        card.Fill(Outline.Circle(212, 92, 44), Palette.Dune, 0.95);
        foreach ((double x, double y, double size) in (ReadOnlySpan<(double, double, double)>)[(120, 190, 92), (226, 214, 40), (56, 118, 26), (176, 128, 20)])
            Birds.Tern(card, Affine.Place(x, y, size, -8));
        card.Write("The flock", Face.Black, 40, 20, 322, Palette.Deep, -0.3);
        card.Write("Which of them looks at you?", Face.Regular, 13, 21, 348, Palette.Deep);
        Mark.Draw(card, 262, 352, 18, Palette.Deep);
        return card;
    }

    private static Picture Tern()
    {
        Picture card = new(Width, Height, 0);
        card.Fill(card.Whole, Palette.Cream);
        Outline window = Outline.Rect(30, 30, 420, 440);
        card.Fill(window, Paint.Down(30, 470, Palette.Deep, Palette.Estuary, new SKColor(0x9A, 0xC4, 0xC2)));
        card.Fill(Outline.Circle(168, 150, 62), Palette.Dune, 0.95);
        Shallows(card, 400, new SKColor(0x2A, 0x68, 0x72), Palette.Deep);
        Birds.Tern(card, Affine.Place(268, 318, 150, -10));
        Birds.Tern(card, Affine.Place(112, 262, 36, -12));
        Birds.Tern(card, Affine.Place(74, 214, 20, -6));
        Caption(card, "Common tern", "Sterna hirundo", "Flies from the Cape to this marsh", "and back, year after year.", Palette.Deep, Palette.Samphire);
        return card;
    }

    /// <summary>Water with lines of light, from a height down to the lower edge of the window.</summary>
    private static void Shallows(Picture card, double from, SKColor far, SKColor near)
    {
        card.Fill(Outline.Rect(30, from, 420, 470 - from), Paint.Down(from, 470, far, near));
        Chance chance = new(91);
        for (int i = 0; i < 26; i++)
        {
            double y = from + 6 + ((464 - from - 6) * i / 26);
            double length = chance.Between(24, 120) * (0.4 + (0.8 * i / 26));
            double x = chance.Between(36, 444 - length);
            card.Fill(Outline.RoundRect(x, y, length, 1.5 + (0.06 * i), 0.75), Palette.Cream, 0.45);
        }
    }

    private static void Caption(Picture card, string name, string latin, string one, string two, SKColor dark, SKColor warm)
    {
        card.Write(name, Face.Black, 54, 30, 530, dark, -0.3);
        card.Write(latin, Face.Regular, 17, 31, 554, warm, 0.4);
        card.Write(one, Face.Regular, 14.5, 31, 590, dark);
        card.Write(two, Face.Regular, 14.5, 31, 609, dark);
        Mark.Draw(card, 424, 588, 25, dark);
    }
}
