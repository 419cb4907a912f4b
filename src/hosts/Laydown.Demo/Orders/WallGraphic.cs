using Laydown.Demo.Art;
using Laydown.Demo.Files;
using Laydown.Formats.PdfWriting;

namespace Laydown.Demo.Orders;

/// <summary>A wall of 6.4 m × 2.4 m, drawn 1:10 as such files come: to be printed in panels on a roll.</summary>
internal static class WallGraphic
{
    private const double Width = 640;
    private const double Height = 240;
    private const double Bleed = 3;

    public static void Write(string folder) => PdfFiles.Write(Path.Combine(folder, "wall-estuary-1to10.pdf"), "Wall of the entrance hall, drawn 1:10", true, file =>
        file.AddPage(PdfPageSize.WithBleed(Width, Height, Bleed), canvas => new PicturePdf(file).Draw(canvas, Draw(), Bleed, Bleed)));

    internal static Picture Draw()
    {
        Picture wall = new(Width, Height, Bleed);
        new Estuary(wall, -Bleed, -Bleed, Width + (2 * Bleed), Height + (2 * Bleed), Light.Day, 17).Draw();

        // A flock that comes in from the right, larger as it nears.
        Chance chance = new(1044);
        for (int i = 0; i < 15; i++)
        {
            double t = i / 14.0;
            double size = 6 + (26 * Math.Pow(1 - t, 2.2));
            Birds.Tern(wall, Affine.Place(318 + (300 * t) + chance.Between(-8, 8), 82 - (46 * t) + chance.Between(-12, 12), size, chance.Between(-16, 4), true));
        }

        Birds.Avocet(wall, Affine.Place(390, 168, 34));
        Birds.Avocet(wall, Affine.Place(452, 160, 26, 0, true));
        Birds.Avocet(wall, Affine.Place(322, 156, 22));
        wall.Write("Where the sea", Face.Black, 21, 36, 50, Palette.Deep, -0.15);
        wall.Write("breathes twice a day", Face.Black, 21, 36, 71, Palette.Deep, -0.15);
        Mark.WithName(wall, 36, 82, 15, Palette.Deep);
        return wall;
    }
}
