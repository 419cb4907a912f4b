using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>The estuary: sky, dunes, tide channels winding through saltmarsh, reeds in front. The same ground by day and by night.</summary>
/// <param name="picture">Where to draw.</param>
/// <param name="x">Left edge, mm.</param>
/// <param name="y">Upper edge, mm.</param>
/// <param name="w">Width, mm.</param>
/// <param name="h">Height, mm.</param>
/// <param name="light">Hour.</param>
/// <param name="ground">Start of chance: the lie of the land.</param>
internal sealed class Estuary(Picture picture, double x, double y, double w, double h, Light light, ulong ground)
{
    private readonly double horizon = y + (0.46 * h);

    /// <summary>Unit of size: small features are shares of it.</summary>
    private double Unit => Math.Min(w, h * 1.6);

    /// <summary>Everything but birds.</summary>
    public void Draw(bool reeds = true)
    {
        Sky();
        Ridges();
        Marsh();
        Channels();
        if (reeds)
            Reeds();
    }

    private double Ground(double depth) => horizon + ((y + h - horizon) * depth);

    private void Sky()
    {
        picture.Fill(Outline.Rect(x, y, w, horizon - y + (0.01 * h)), Paint.Down(y, horizon, light.Sky));
        if (light.IsNight)
        {
            new Stars(picture, x, y, w, horizon - y, ground).Draw();
        }
        else
        {
            double r = 0.055 * Unit;
            picture.Fill(Outline.Circle(x + (0.70 * w), horizon - (1.25 * r), r * 1.9), light.Sun, 0.25);
            picture.Fill(Outline.Circle(x + (0.70 * w), horizon - (1.25 * r), r), light.Sun, 0.95);
            Clouds();
        }
    }

    private void Clouds()
    {
        Chance chance = new(ground + 77);
        for (int i = 0; i < 7; i++)
        {
            double cx = x + (w * chance.Between(0.02, 0.98));
            double cy = y + ((horizon - y) * chance.Between(0.36, 0.80));
            double length = Unit * chance.Between(0.10, 0.34);
            Lens(cx, cy, length, length * 0.045, new SKColor(0xFF, 0xFC, 0xF2), 0.5);
        }
    }

    private void Ridges()
    {
        for (int ridge = 0; ridge < 3; ridge++)
        {
            Chance chance = new(ground + (ulong)ridge + 11);
            double lift = (0.070 - (0.021 * ridge)) * h;
            double[] phases = [chance.Between(0, 6.3), chance.Between(0, 6.3), chance.Between(0, 6.3)];
            List<(double, double)> top = [];
            for (int i = 0; i <= 48; i++)
            {
                double t = i / 48.0;
                double wave = (0.55 * Math.Sin((t * 4.1) + phases[0])) + (0.3 * Math.Sin((t * 9.7) + phases[1])) + (0.15 * Math.Sin((t * 23) + phases[2]));
                top.Add((x + (w * t), horizon - (lift * (0.55 + (0.45 * wave)))));
            }

            Outline shape = Outline.Through(top).L(x + w, horizon + (0.02 * h)).L(x, horizon + (0.02 * h)).Z();
            picture.Fill(shape, Paint.Down(horizon - lift, horizon, light.Ridges[ridge], Palette.Mix(light.Ridges[ridge], light.Sky[^1], 0.35)));
        }
    }

    private void Marsh()
    {
        // Open water at the far end, then flats that come nearer and darker.
        picture.Fill(Outline.Rect(x, horizon, w, h - (horizon - y)), Paint.Down(horizon, y + h, [light.Water[0], .. light.Flats]));
        picture.Fill(Outline.Rect(x, horizon - (0.002 * h), w, 0.075 * h), Paint.Down(horizon, horizon + (0.075 * h), light.Water[0], light.Water[1], light.Water[1]));
        Chance chance = new(ground + 5);
        Shore(chance);
        for (int i = 0; i < 150; i++)
        {
            double depth = 0.10 + (0.9 * Math.Pow((i + chance.Next()) / 150, 1.25));
            double length = Unit * chance.Between(0.05, 0.30) * (0.25 + depth);
            Lens(x + (w * chance.Between(-0.05, 1.05)), Ground(depth), length, length * chance.Between(0.035, 0.075), chance.Pick(light.Tufts), 1);
        }
    }

    /// <summary>Tongues of mud and water that lie across each other where the flats begin.</summary>
    private void Shore(Chance chance)
    {
        for (int i = 0; i < 34; i++)
        {
            double depth = 0.085 + (0.105 * chance.Next());
            double length = Unit * chance.Between(0.10, 0.42);
            bool mud = depth > 0.135 ? i % 4 != 0 : i % 4 == 0;
            SKColor colour = mud ? Palette.Mix(light.Water[0], light.Flats[0], 0.35 + (2.2 * depth)) : light.Water[1];
            Lens(x + (w * chance.Between(-0.05, 1.05)), Ground(depth), length, length * chance.Between(0.02, 0.04), colour, 1);
        }
    }

    private void Channels()
    {
        Channel(0.60, 0.30, 1.0, 0.115, 0.10, 3);
        Channel(0.16, 0.10, 0.62, 0.035, 0.16, 4);
        Channel(0.90, 0.07, 0.55, 0.028, 0.2, 6);
    }

    /// <summary>A channel that winds from far to near and widens.</summary>
    private void Channel(double start, double swing, double reach, double width, double turn, int bends)
    {
        List<(double, double)> left = [];
        List<(double, double)> right = [];
        List<(double, double)> bank = [];
        for (int i = 0; i <= 60; i++)
        {
            double t = i / 60.0;
            double depth = 0.045 + ((reach - 0.045) * Math.Pow(t, 1.55)) + (reach >= 1 ? 0.06 * t : 0);
            double centre = x + (w * (start + (swing * (0.15 + (0.85 * t)) * Math.Sin((turn * 10) + (bends * 2.1 * Math.Sqrt(t))))));
            double half = Unit * (0.004 + (width * Math.Pow(t, 1.7))) * (1 + (0.22 * Math.Sin(t * 17)));
            if (reach < 1)
                half *= Math.Sin(Math.PI * Math.Min(1, 0.12 + (t * 0.88))) + 0.02;
            left.Add((centre - half, Ground(depth)));
            right.Add((centre + half, Ground(depth)));
            bank.Add((centre + (half * 1.10) + (0.002 * Unit), Ground(depth)));
        }

        List<(double, double)> near = [.. left.Select(p => (p.Item1 - (0.0022 * Unit), p.Item2 - (0.0045 * h * (p.Item2 - horizon) / (y + h - horizon))))];
        picture.Fill(Outline.Ribbon(near, bank), light.Bank, 0.75);
        picture.Fill(Outline.Ribbon(left, right), Paint.Down(horizon, y + h, light.Water));

        // Streaks of light on the water.
        Chance chance = new(ground + (ulong)bends);
        for (int i = 8; i < 60; i += 2)
        {
            double wide = right[i].Item1 - left[i].Item1;
            double length = wide * chance.Between(0.12, 0.42);
            Lens(left[i].Item1 + (wide * chance.Between(0.28, 0.72)), left[i].Item2, length, length * 0.035, light.Sheen, light.IsNight ? 0.35 : 0.7);
        }
    }

    private void Reeds()
    {
        Chance chance = new(ground + 21);
        for (int i = 0; i < 120; i++)
        {
            // Two stands, left and right, that leave the middle open.
            double side = chance.Next();
            double u = i % 5 < 3 ? 0.30 * side * side : 1 - (0.20 * side * side);
            double tall = h * chance.Between(0.16, 0.44) * (1 - (0.55 * side));
            double lean = tall * chance.Between(-0.10, 0.22);
            double foot = x + (w * u);
            double bottom = y + h + (0.02 * h);
            double half = Unit * chance.Between(0.0016, 0.0034);
            SKColor colour = chance.Pick(light.Reeds);
            Outline blade = new Outline().M(foot - half, bottom).C(foot - half, bottom - (0.5 * tall), foot + (0.35 * lean), bottom - (0.8 * tall), foot + lean, bottom - tall)
                .C(foot + (0.45 * lean) + half, bottom - (0.75 * tall), foot + half, bottom - (0.45 * tall), foot + half, bottom).Z();
            picture.Fill(blade, Paint.Line(foot, bottom, foot + lean, bottom - tall, light.Reeds[0], colour));
            if (i % 4 == 0)
                Plume(foot + lean, bottom - tall, Unit * chance.Between(0.012, 0.022), 12 + (40 * lean / tall), colour);
        }
    }

    private void Plume(double px, double py, double size, double degrees, SKColor colour)
    {
        Outline plume = new Outline().M(0, 0.9).C(-0.34, 0.5, -0.26, -0.4, 0.12, -1.3).C(0.36, -0.5, 0.34, 0.4, 0, 0.9).Z();
        picture.Fill(plume.At(Affine.Place(px, py, size, degrees)), Palette.Mix(colour, light.Reeds[^1], 0.6));
    }

    private void Lens(double cx, double cy, double length, double thick, SKColor colour, double opacity)
    {
        double a = length / 2;
        picture.Fill(
            new Outline().M(cx - a, cy).C(cx - (a * 0.5), cy - thick, cx + (a * 0.35), cy - (thick * 0.8), cx + a, cy)
                .C(cx + (a * 0.5), cy + (thick * 0.9), cx - (a * 0.4), cy + thick, cx - a, cy).Z(),
            colour,
            opacity);
    }
}
