using Laydown.Colour.Spaces;

namespace Laydown.Formats.Icc;

/// <summary>Numbers of the tables as 16-bit codes.</summary>
internal static class InkCodes
{
    /// <summary>Lab of edition 2: L* 100 is 65280, a* and b* 0 are 32768.</summary>
    internal static ushort[] Lab2(Lab lab) => [Code(lab.L * 652.8), Code((lab.A + 128) * 256), Code((lab.B + 128) * 256)];

    /// <summary>Lab of edition 4: L* 100 is 65535, a* and b* 0 are 32896.</summary>
    internal static ushort[] Lab4(Lab lab) => [Code(lab.L * 655.35), Code((lab.A + 128) * 257), Code((lab.B + 128) * 257)];

    /// <summary>An ink rounded down, so that limits hold.</summary>
    internal static ushort Ink(float ink) => Code(Math.Floor(ink * 65535.0));

    /// <summary>The largest code that still lies within a limit once it is rounded to 8 bits.</summary>
    internal static ushort Cap(double limit) => Code(Math.Floor((255 * limit) + 1e-9) * 257);

    /// <summary>The nearest code.</summary>
    internal static ushort Code(double value) => (ushort)Math.Clamp(Math.Round(value), 0, 65535);
}
