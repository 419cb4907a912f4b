using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>A night sky: stars, the band of the Milky Way, a few constellations joined by thin lines.</summary>
internal sealed class Stars(Picture picture, double x, double y, double w, double h, ulong start)
{
    // Places within each figure, from memory of the sky, x to the right and y downward; lines join stars by number.
    private static readonly ((double X, double Y, double Size)[] Places, (int, int)[] Lines)[] Figures =
    [
        // The Plough.
        ([(0, 0.16, 1), (0.20, 0.05, 1), (0.36, 0.11, 1), (0.52, 0.20, 0.8), (0.56, 0.42, 1), (0.82, 0.46, 1), (0.86, 0.20, 1.1)],
            [(0, 1), (1, 2), (2, 3), (3, 4), (4, 5), (5, 6), (6, 3)]),

        // Cassiopeia.
        ([(0, 0.10, 1), (0.22, 0.34, 1.1), (0.44, 0.18, 1), (0.64, 0.42, 0.9), (0.86, 0.14, 0.9)], [(0, 1), (1, 2), (2, 3), (3, 4)]),

        // The Swan.
        ([(0.5, 0, 1.2), (0.46, 0.28, 1), (0.16, 0.20, 0.9), (0.78, 0.42, 0.9), (0.40, 0.56, 0.7), (0.34, 0.86, 0.9)],
            [(0, 1), (1, 2), (1, 3), (1, 4), (4, 5)]),
    ];

    private double Unit => Math.Min(w, h * 3.4);

    public void Draw()
    {
        Band();
        Chance chance = new(start + 301);
        for (int i = 0; i < 420; i++)
        {
            // Most stars are faint, and more stand in the band.
            double u = chance.Next();
            double v = i % 3 == 0 ? BandAt(u) + ((chance.Next() - chance.Next()) * 0.20) : chance.Next();
            if (v is < 0 or > 0.98)
                continue;
            double size = Unit * (0.00042 + (0.0013 * Math.Pow(chance.Next(), 5)));
            SKColor colour = Palette.Mix(Palette.Star, i % 4 == 0 ? new SKColor(0xA9, 0xCB, 0xE8) : Palette.Lamp, chance.Next() * 0.7);
            picture.Fill(Outline.Circle(x + (u * w), y + (v * h), size), colour, Math.Min(1, 0.45 + (0.6 * (1 - v))));
        }

        Figure(0, 0.05, 0.40, 0.22);
        Figure(1, 0.55, 0.12, 0.15);
        Figure(2, 0.80, 0.10, 0.13);
    }

    private static double BandAt(double u) => 0.92 - (0.86 * u) + (0.05 * Math.Sin(u * 9));

    private void Band()
    {
        (double left, double top, double wide, double high) = (x, y, w, h);
        double soft = Unit;
        picture.Soften(x, y, w, h, Picture.SoftPpi, canvas =>
        {
            Chance chance = new(start + 300);
            using SKPaint haze = new() { IsAntialias = true, IsDither = true };
            for (int i = 0; i < 460; i++)
            {
                double u = chance.Next();
                double off = (chance.Next() + chance.Next() + chance.Next() - 1.5) * 0.26;
                double size = soft * chance.Between(0.012, 0.055);
                SKColor tint = Palette.Mix(new SKColor(0x9C, 0xC0, 0xD6), Palette.Sand, chance.Next());
                haze.Color = SKColors.White;
                SKPoint centre = new((float)(left + (u * wide)), (float)(top + ((BandAt(u) + off) * high)));
                haze.Shader = SKShader.CreateRadialGradient(centre, (float)size, [tint.WithAlpha((byte)chance.Between(6, 21)), tint.WithAlpha(0)], SKShaderTileMode.Clamp);
                canvas.DrawCircle(centre, (float)size, haze);
                haze.Shader.Dispose();
            }
        });
    }

    private void Figure(int index, double u, double v, double size)
    {
        ((double X, double Y, double Size)[] places, (int, int)[] lines) = Figures[index];
        double scale = size * Unit;
        (double X, double Y) At(int i) => (x + (u * w) + (places[i].X * scale), y + (v * h) + (places[i].Y * scale));
        foreach ((int from, int to) in lines)
        {
            // Thin lines that stop short of their stars.
            (double x0, double y0) = At(from);
            (double x1, double y1) = At(to);
            double length = Math.Sqrt(((x1 - x0) * (x1 - x0)) + ((y1 - y0) * (y1 - y0)));
            double gap = 0.007 * Unit / length;
            double half = 0.00045 * Unit;
            (double nx, double ny) = (-(y1 - y0) / length * half, (x1 - x0) / length * half);
            (double ax, double ay, double bx, double by) = (x0 + ((x1 - x0) * gap), y0 + ((y1 - y0) * gap), x1 - ((x1 - x0) * gap), y1 - ((y1 - y0) * gap));
            picture.Fill(new Outline().M(ax + nx, ay + ny).L(bx + nx, by + ny).L(bx - nx, by - ny).L(ax - nx, ay - ny).Z(), Palette.Lamp, 0.55);
        }

        for (int i = 0; i < places.Length; i++)
            picture.Fill(Mark.Star(At(i).X, At(i).Y, 0.0075 * Unit * places[i].Size), Palette.Star);
    }
}
