namespace Laydown.Raster.Screens;

/// <summary>Weights of error diffusion and strength of the threshold's texture by tone: 16 entries from bare to one half, the same beyond
/// in mirror image.</summary>
/// <param name="Strength">How far the threshold follows the array, of 256: at 256 from 0 to full.</param>
/// <param name="Ahead">Share of the error for the next dot of the row, of 256.</param>
/// <param name="Behind">Share for the dot below the one before, of 256.</param>
/// <param name="Below">Share for the dot below, of 256; the rest goes to the one below the next.</param>
internal sealed record DiffusionTable(byte[] Strength, byte[] Ahead, byte[] Behind, byte[] Below)
{
    /// <summary>Entries.</summary>
    public const int Size = 16;

    /// <summary>The table of the program, found by own search: see the remarks at <see cref="DiffusionScreen"/>.</summary>
    public static DiffusionTable Own { get; } = new(
        [160, 48, 48, 48, 48, 48, 48, 72, 72, 72, 72, 72, 72, 96, 96, 128],
        [128, 128, 112, 112, 112, 112, 112, 112, 96, 96, 96, 96, 96, 96, 96, 96],
        [48, 48, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64],
        [72, 72, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80]);

    /// <summary>A table of one setting for all tones.</summary>
    public static DiffusionTable Even(byte strength, byte ahead, byte behind, byte below) =>
        new([.. Enumerable.Repeat(strength, Size)], [.. Enumerable.Repeat(ahead, Size)], [.. Enumerable.Repeat(behind, Size)], [.. Enumerable.Repeat(below, Size)]);
}
