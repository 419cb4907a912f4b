using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Gamuts;

/// <summary>The body of all colours a device can make, in CIELAB: how far it reaches from its middle in every direction.</summary>
/// <remarks>
/// Segment maxima: directions from (50, 0, 0) in cells of 5° by 5°, each keeping its farthest colour; empty cells take the mean of their
/// neighbours, and pits of a single cell are raised to them. So small hollows are filled; good to about one ΔE for drawings, volume and gamut mapping. Whether one colour can be
/// printed is told by solving for it.
/// </remarks>
public sealed class Gamut
{
    /// <summary>L* of the middle, on the neutral axis.</summary>
    public const double MiddleL = 50;

    private const int Hues = 72;
    private const int Heights = 37;
    private const double CellDegrees = 5;
    private const double PitShare = 0.97;
    private readonly double[] reach = new double[Hues * Heights];

    private Gamut()
    {
    }

    /// <summary>Volume in cubic Lab units.</summary>
    public double Volume { get; private set; }

    /// <summary>Extent of the body along a* and b*: least and greatest.</summary>
    public (double LeastA, double MostA, double LeastB, double MostB) Extent { get; private set; }

    /// <summary>The gamut of a print, media-relative: the bare stock is white.</summary>
    /// <param name="model">The print.</param>
    /// <param name="perInk">Most of each ink, 0 to 1.</param>
    /// <param name="total">Largest sum of inks.</param>
    /// <exception cref="ArgumentException">Not one limit for each ink.</exception>
    public static Gamut Of(IInkModel model, IReadOnlyList<double> perInk, double total)
    {
        if (perInk.Count != model.Inks)
            throw new ArgumentException(Invariant($"{perInk.Count} limits: wanted {model.Inks}."), nameof(perInk));
        return From(InkSurface.Of(perInk, total).Select(inks => Lab.From(model.ToXyz(inks), model.White)));
    }

    /// <summary>The gamut of sRGB, media-relative under D50.</summary>
    public static Gamut OfSrgb()
    {
        const int steps = 24;
        List<Lab> colours = [];
        for (int face = 0; face < 6; face++)
        {
            for (int i = 0; i <= steps; i++)
            {
                for (int j = 0; j <= steps; j++)
                {
                    double[] rgb = new double[3];
                    rgb[face % 3] = face / 3;
                    rgb[(face + 1) % 3] = i / (double)steps;
                    rgb[(face + 2) % 3] = j / (double)steps;
                    colours.Add(Srgb.ToLab(rgb[0], rgb[1], rgb[2]));
                }
            }
        }

        return From(colours);
    }

    /// <summary>The body around colours; those of its surface matter.</summary>
    public static Gamut From(IEnumerable<Lab> colours)
    {
        Gamut gamut = new();
        bool[] seen = new bool[Hues * Heights];
        (double la, double ma, double lb, double mb) = (0, 0, 0, 0);
        foreach (Lab colour in colours)
        {
            (double radius, double hue, double height) = Direction(colour);
            int cell = Cell((int)Math.Round(hue / CellDegrees), (int)Math.Round(height / CellDegrees));
            gamut.reach[cell] = Math.Max(gamut.reach[cell], radius);
            seen[cell] = true;
            (la, ma, lb, mb) = (Math.Min(la, colour.A), Math.Max(ma, colour.A), Math.Min(lb, colour.B), Math.Max(mb, colour.B));
        }

        gamut.Extent = (la, ma, lb, mb);
        gamut.LevelPoles(seen);
        gamut.Fill(seen);
        gamut.RaisePits();
        gamut.Volume = gamut.Integral();
        return gamut;
    }

    /// <summary>How far the body reaches from its middle toward a colour.</summary>
    public double ReachToward(Lab colour)
    {
        (_, double hue, double height) = Direction(colour);
        double h = hue / CellDegrees, v = height / CellDegrees;
        int left = (int)Math.Floor(h), low = Math.Min((int)Math.Floor(v), Heights - 2);
        double right = h - left, up = v - low;
        double bottom = (reach[Cell(left, low)] * (1 - right)) + (reach[Cell(left + 1, low)] * right);
        double top = (reach[Cell(left, low + 1)] * (1 - right)) + (reach[Cell(left + 1, low + 1)] * right);
        return (bottom * (1 - up)) + (top * up);
    }

    /// <summary>Distance of a colour from the middle as a part of the body's reach there: up to 1 inside.</summary>
    public double Depth(Lab colour)
    {
        double radius = Direction(colour).Radius;
        return radius == 0 ? 0 : radius / Math.Max(1e-9, ReachToward(colour));
    }

    /// <summary>Whether a colour lies in the body.</summary>
    public bool Holds(Lab colour) => Depth(colour) <= 1;

    /// <summary>Largest chroma at a lightness and hue, 0 where even the neutral lies outside.</summary>
    /// <param name="lightness">L*, 0 to 100.</param>
    /// <param name="hueDegrees">Hue angle, degrees.</param>
    public double MostChroma(double lightness, double hueDegrees)
    {
        (double sin, double cos) = Math.SinCos(hueDegrees * Math.PI / 180);
        double low = 0, high = 200;
        if (!Holds(new(lightness, 0, 0)))
            return 0;
        for (int step = 0; step < 40; step++)
        {
            double middle = (low + high) / 2;
            (low, high) = Holds(new(lightness, middle * cos, middle * sin)) ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>Outline at one lightness, a* and b* of its corners all the way round.</summary>
    /// <param name="lightness">L*, 0 to 100.</param>
    /// <param name="corners">Number of corners, 8 to 720.</param>
    public IReadOnlyList<Lab> SliceAtLightness(double lightness, int corners)
    {
        Bounds.Within(corners, 8, 720);
        return [.. Enumerable.Range(0, corners).Select(i =>
        {
            double hue = i * 360.0 / corners, chroma = MostChroma(lightness, hue);
            (double sin, double cos) = Math.SinCos(hue * Math.PI / 180);
            return new Lab(lightness, chroma * cos, chroma * sin);
        })];
    }

    // At the two poles all hues are one direction.
    private void LevelPoles(bool[] seen)
    {
        foreach (int height in new[] { 0, Heights - 1 })
        {
            double most = Enumerable.Range(0, Hues).Max(h => reach[Cell(h, height)]);
            for (int hue = 0; hue < Hues; hue++)
                (reach[Cell(hue, height)], seen[Cell(hue, height)]) = (most, true);
        }
    }

    private void Fill(bool[] seen)
    {
        while (seen.Contains(false))
        {
            List<(int Cell, double Reach)> filled = [];
            for (int hue = 0; hue < Hues; hue++)
            {
                for (int height = 1; height < Heights - 1; height++)
                {
                    int[] around = [Cell(hue - 1, height), Cell(hue + 1, height), Cell(hue, height - 1), Cell(hue, height + 1)];
                    double[] known = [.. around.Where(c => seen[c]).Select(c => reach[c])];
                    if (!seen[Cell(hue, height)] && known.Length > 0)
                        filled.Add((Cell(hue, height), known.Average()));
                }
            }

            foreach ((int cell, double value) in filled)
                (reach[cell], seen[cell]) = (value, true);
        }
    }

    // A cell that only met colours from inside the body is a pit: lower than the mean of its neighbours both along hue and along height.
    private void RaisePits()
    {
        for (int pass = 0; pass < 3; pass++)
        {
            double[] before = [.. reach];
            for (int hue = 0; hue < Hues; hue++)
            {
                for (int height = 1; height < Heights - 1; height++)
                {
                    double across = (before[Cell(hue - 1, height)] + before[Cell(hue + 1, height)]) / 2;
                    double along = (before[Cell(hue, height - 1)] + before[Cell(hue, height + 1)]) / 2;
                    reach[Cell(hue, height)] = Math.Max(before[Cell(hue, height)], PitShare * Math.Min(across, along));
                }
            }
        }
    }

    // ∫ r³/3 over all directions; a cell around height v spans sin(v + ½) − sin(v − ½).
    private double Integral()
    {
        double volume = 0, width = CellDegrees * Math.PI / 180;
        for (int height = 0; height < Heights; height++)
        {
            double centre = ((height * CellDegrees) - 90) * Math.PI / 180;
            double low = Math.Max(-Math.PI / 2, centre - (width / 2)), high = Math.Min(Math.PI / 2, centre + (width / 2));
            for (int hue = 0; hue < Hues; hue++)
                volume += Math.Pow(reach[Cell(hue, height)], 3) / 3 * width * (Math.Sin(high) - Math.Sin(low));
        }

        return volume;
    }

    private static int Cell(int hue, int height) => (((hue % Hues) + Hues) % Hues * Heights) + height;

    // Radius from the middle, hue 0 to 360°, height 0° (straight down) to 180° (straight up).
    private static (double Radius, double Hue, double Height) Direction(Lab colour)
    {
        double up = colour.L - MiddleL, chroma = colour.Chroma, hue = Math.Atan2(colour.B, colour.A) * 180 / Math.PI;
        return (Math.Sqrt((up * up) + (chroma * chroma)), hue < 0 ? hue + 360 : hue, 90 + (Math.Atan2(up, chroma) * 180 / Math.PI));
    }
}
