using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>A mask from how light a picture of four process plates (C, M, Y, K) is.</summary>
/// <remarks>
/// Light = (1 − K) (0.2126 (1 − C) + 0.7152 (1 − M) + 0.0722 (1 − Y)): the luma weights of red, green and blue [BT709] on the simple complement of the inks.
/// </remarks>
/// <param name="ofLight">True: full where the picture is bare (inverse of the image). False: full where it is darkest (a picture read as a mask).</param>
/// <param name="alphaPlane">Plane the mask is multiplied by, so that it is bare where the file is clear; null for none.</param>
public sealed class Lightness(bool ofLight, int? alphaPlane = null) : ITileStage
{
    // Weights sum to 65536, so that a bare pixel is exactly full.
    private const uint Red = 13933, Green = 46871, Blue = 4732;

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks >= 4 && (alphaPlane is null || (alphaPlane >= 0 && alphaPlane < sourceInks))
        ? 1
        : throw new ArgumentException(Invariant($"Plates: found {sourceInks}; wanted at least C, M, Y, K, and alpha where it is looked at."), nameof(sourceInks));

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int row = 0; row < source.Rows; row++)
        {
            ReadOnlySpan<ushort> c = source.Row(0, row), m = source.Row(1, row), y = source.Row(2, row), k = source.Row(3, row);
            Span<ushort> mask = target.Row(0, row);
            for (int x = 0; x < mask.Length; x++)
            {
                uint ink = (uint)(((Red * (ulong)c[x]) + (Green * (ulong)m[x]) + (Blue * (ulong)y[x]) + 32768) >> 16);
                uint light = (uint)(((ulong)(Tile.Full - ink) * (uint)(Tile.Full - k[x])) / Tile.Full);
                mask[x] = (ushort)(ofLight ? light : Tile.Full - light);
            }

            if (alphaPlane is { } plane)
                Multiply(mask, source.Row(plane, row));
        }
    }

    private static void Multiply(Span<ushort> mask, ReadOnlySpan<ushort> alpha)
    {
        // To the nearest code: full leaves the mask as it is.
        for (int x = 0; x < mask.Length; x++)
            mask[x] = (ushort)((((uint)mask[x] * alpha[x]) + (Tile.Full / 2)) / Tile.Full);
    }
}
