using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;
using Laydown.Formats.Icc;

namespace Laydown.Edges.Tests.Icc;

/// <summary>Tables of an invented print: each ink lets a part of X, Y and Z through, the parts multiply.</summary>
internal static class InkTables
{
    public static readonly InkLimits Limits = new([0.85, 0.9, 1, 0.75, 0.8, 0.65, 0.7, 0.6], 2.2);

    private static readonly double[][] Passes =
    [
        [0.15, 0.22, 0.75], [0.34, 0.17, 0.17], [0.80, 0.82, 0.09], [0.02, 0.02, 0.02], [0.45, 0.28, 0.05], [0.12, 0.25, 0.12], [0.15, 0.1, 0.4], [0.5, 0.55, 0.7],
    ];

    private static readonly string[] Names = ["Cyan", "Magenta", "Yellow", "Black", "Orange", "Green", "Violet", "Light cyan"];

    public static Xyz White => new(84, 87, 71);

    public static InkLimits LimitsOf(int inks) => new([.. Limits.PerInk.Take(inks)], Limits.Total);

    public static OutputProfileOptions Options(int inks, IccEdition edition) =>
        new() { Edition = edition, InkNames = Names[..inks], Limits = LimitsOf(inks), Readings = "CGATS.17\n" };

    public static byte[] Profile(int inks, IccEdition edition) =>
        OutputProfile.Write(Make(inks), Invariant($"Print of {inks} inks, invented"), "No copyright", Options(inks, edition));

    public static ProfileTables Make(int inks)
    {
        int steps = inks <= 4 ? 9 : inks <= 6 ? 4 : 3, inverse = 17;
        Lab[] forward = [.. Enumerable.Range(0, (int)Math.Pow(steps, inks)).Select(n => Colour(Digits(n, steps, inks)))];
        InverseAxes axes = InverseAxes.Even(inverse);
        Lab[] nodes = [.. Enumerable.Range(0, inverse * inverse * inverse)
            .Select(n => axes.Node(n / (inverse * inverse), n / inverse % inverse, n % inverse))];
        float[] any = [.. nodes.SelectMany(n => Inks(n, inks))];
        return new(White, inks, steps, forward, axes, any, any, [.. nodes.Select(n => (float)(Math.Abs(n.A) + Math.Abs(n.B)) / 8)]);
    }

    public static LinkTables Link(int channels, int inks)
    {
        const int steps = 5;
        float[] table = [.. Enumerable.Range(0, (int)Math.Pow(steps, channels)).Select(n => Digits(n, steps, channels))
            .SelectMany(d => Enumerable.Range(0, inks).Select(i => (float)(0.9 * d[i % channels] * (1 - (0.5 * d[(i + 1) % channels])))))];
        float[] curve = [.. Enumerable.Range(0, 33).Select(i => (float)Math.Pow(i / 32.0, 1.3))];
        return new(channels, Names[..inks], [.. Enumerable.Repeat<IReadOnlyList<float>>(curve, channels)], steps, table);
    }

    // Smooth and invented; kept within the limits as a maker of tables would.
    private static IEnumerable<float> Inks(Lab node, int inks)
    {
        double dark = 1 - (node.L / 100), hue = Math.Atan2(node.B, node.A), chroma = Math.Min(1, Math.Sqrt((node.A * node.A) + (node.B * node.B)) / 90);
        double[] mix = [.. Enumerable.Range(0, inks).Select(i => dark * (0.4 + (1.2 * chroma * Math.Pow(Math.Cos((hue - i) / 2), 2))))];
        LimitsOf(inks).Project(mix);
        return mix.Select(v => (float)v);
    }

    private static Lab Colour(double[] mix)
    {
        double[] xyz = [WhitePoints.Pcs.X, WhitePoints.Pcs.Y, WhitePoints.Pcs.Z];
        for (int i = 0; i < mix.Length; i++)
        {
            for (int c = 0; c < 3; c++)
                xyz[c] *= 1 - (mix[i] * (1 - Passes[i][c]));
        }

        return Lab.From(new(xyz[0], xyz[1], xyz[2]), WhitePoints.Pcs);
    }

    private static double[] Digits(int number, int steps, int count)
    {
        double[] digits = new double[count];
        for (int i = count - 1; i >= 0; i--, number /= steps)
            digits[i] = number % steps / (steps - 1.0);
        return digits;
    }
}
