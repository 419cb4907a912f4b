using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;
using Laydown.Formats.Icc;

namespace Laydown.Bench;

/// <summary>An invented separation by formula: six inks with a black that starts sharply and light inks that hand over, as a link and as a profile. For speed alone; no print looks like it.</summary>
internal static class RasterInks
{
    /// <summary>The inks.</summary>
    public static readonly IReadOnlyList<string> Names = ["Cyan", "Magenta", "Yellow", "Black", "Light Cyan", "Light Magenta"];

    /// <summary>Most of all inks, and of black, of one full ink.</summary>
    public const double MostTotal = 2.6, MostBlack = 0.95;

    /// <summary>A link from RGB.</summary>
    /// <param name="steps">Nodes along each channel.</param>
    public static LinkTables Link(int steps)
    {
        float[] table = new float[steps * steps * steps * Names.Count];
        for (int node = 0; node < steps * steps * steps; node++)
        {
            double r = node / (steps * steps) / (steps - 1.0), g = node / steps % steps / (steps - 1.0), b = node % steps / (steps - 1.0);
            double[] inks = Inks(1 - r, 1 - g, 1 - b);
            for (int ink = 0; ink < inks.Length; ink++)
                table[(node * inks.Length) + ink] = (float)inks[ink];
        }

        float[] straight = [0, 1];
        return new(3, Names, [straight, straight, straight], steps, table);
    }

    /// <summary>An output profile with the same inks, for libraries that want one.</summary>
    /// <param name="steps">Nodes along L*, a*, b*, odd.</param>
    public static byte[] Profile(int steps)
    {
        InverseAxes axes = InverseAxes.Even(steps);
        List<float> back = [];
        foreach (double l in axes.L)
        {
            foreach (double a in axes.A)
            {
                foreach (double b in axes.B)
                {
                    // Roughly opponent: enough for inks of the right size.
                    double c = 1 - ((l + (a > 0 ? 0 : a * 0.4)) / 100), m = 1 - ((l - (a * 0.6)) / 100), y = 1 - ((l + (b * 0.6)) / 100);
                    back.AddRange(Inks(Math.Clamp(c, 0, 1), Math.Clamp(m, 0, 1), Math.Clamp(y, 0, 1)).Select(i => (float)i));
                }
            }
        }

        Lab[] forward = [.. Enumerable.Range(0, 64).Select(i => new Lab(100 - (15 * System.Numerics.BitOperations.PopCount((uint)i)), 0, 0))];
        ProfileTables tables = new(new(96.4, 100, 82.5), Names.Count, 2, forward, axes, back, back, new float[steps * steps * steps]);
        return OutputProfile.Write(tables, "bench, invented", "none", OutputProfileOptions.Usual with { Edition = IccEdition.V4, InkNames = Names });
    }

    // Nodes keep the limits of the job, as those of every link do.
    private static double[] Inks(double c, double m, double y)
    {
        double grey = Math.Min(c, Math.Min(m, y)), black = grey < 0.55 ? 0 : Math.Min(MostBlack, (grey - 0.55) / 0.45);
        double left = 1 - (0.6 * black);
        double[] inks = [Dark(c) * left, Dark(m) * left, y * left, 0, Light(c) * left, Light(m) * left];
        double share = Math.Min(1, (MostTotal - black) / Math.Max(1e-9, inks.Sum()));
        return [.. inks.Select((ink, i) => i == 3 ? black : ink * share)];
    }

    private static double Dark(double demand) => demand < 0.3 ? 0 : (demand - 0.3) / 0.7;

    private static double Light(double demand) => Math.Min(1, (demand - Dark(demand)) / 0.35);
}
