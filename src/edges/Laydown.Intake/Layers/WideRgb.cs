using Laydown.Formats.Icc;

namespace Laydown.Intake.Layers;

/// <summary>A wide RGB profile for pages on their way to CIELAB: the primaries of ROMM RGB under D50, a tone curve of gamma 1.8 [ISO22028-2].</summary>
internal static class WideRgb
{
    // Gamma 1.8 with 8 bits after the point.
    private const ushort Gamma = 0x01CD;

    /// <summary>The profile.</summary>
    public static byte[] Profile() =>
        MatrixProfile.Rgb("wide RGB", (0.7977, 0.2880, 0), (0.1352, 0.7119, 0), (0.0313, 0.0001, 0.8249), Gamma);
}
