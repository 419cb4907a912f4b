using Laydown.Colour.Inversion;

namespace Laydown.Formats.Icc;

/// <summary>Curves before a colour → ink table: from the code of L*, a*, b* to a place among the nodes.</summary>
internal static class AxisCurves
{
    // A whole multiple of 257 steps, so that L* 100 of edition 2, code 65280, falls on an entry.
    private const int Entries = (257 * 15) + 1;

    /// <summary>For edition 2: L* 100 is 65280, a* and b* 0 are 32768 of 65535.</summary>
    internal static ushort[][] Edition2(InverseAxes axes) =>
        [Curve(axes.L, 100 * 65535.0 / 65280, 0), Curve(axes.A, 65535 / 256.0, -128), Curve(axes.B, 65535 / 256.0, -128)];

    /// <summary>For edition 4: L* 100 is 65535, a* and b* run from −128 to 127.</summary>
    internal static ushort[][] Edition4(InverseAxes axes) => [Curve(axes.L, 100, 0), Curve(axes.A, 255, -128), Curve(axes.B, 255, -128)];

    private static ushort[] Curve(IReadOnlyList<double> nodes, double range, double least)
    {
        ushort[] curve = new ushort[Entries];
        for (int entry = 0, cell = 0; entry < Entries; entry++)
        {
            double value = least + (range * entry / (Entries - 1));
            while (cell < nodes.Count - 2 && nodes[cell + 1] <= value)
                cell++;
            double place = (cell + ((value - nodes[cell]) / (nodes[cell + 1] - nodes[cell]))) / (nodes.Count - 1);
            curve[entry] = (ushort)Math.Clamp(Math.Round(65535 * place), 0, 65535);
        }

        return curve;
    }
}
