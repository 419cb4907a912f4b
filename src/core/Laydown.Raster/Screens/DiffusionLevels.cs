namespace Laydown.Raster.Screens;

/// <summary>Drops in the arithmetic of error diffusion: 14 bits, full = 16 384.</summary>
internal sealed class DiffusionLevels
{
    /// <summary>Full laydown.</summary>
    public const short Full = 16384;

    /// <summary>For these drops.</summary>
    public DiffusionLevels(DropLevels drops)
    {
        short[] volumes = [.. Enumerable.Range(0, drops.Levels).Select(level => (short)Math.Round(drops.ShareOf(level) * Full))];
        Sizes = [.. Enumerable.Range(1, drops.Levels - 1).Select(level => (short)(volumes[level] - volumes[level - 1]))];
        Middles = [.. Enumerable.Range(1, drops.Levels - 1).Select(level => (short)((volumes[level] + volumes[level - 1]) / 2))];
        Reaches = [.. Sizes.Select(size => (short)Math.Min(2 * size, short.MaxValue))];
    }

    /// <summary>By how much a drop exceeds the one before.</summary>
    public short[] Sizes { get; }

    /// <summary>Half way between a drop and the one before: thresholds without texture.</summary>
    public short[] Middles { get; }

    /// <summary>Share of the texture that a drop's threshold takes, of 32 768.</summary>
    public short[] Reaches { get; }

    /// <summary>Contone of 16 bits in 14: 0 stays 0, full becomes 16 384.</summary>
    public static short Value(ushort tone)
    {
        int half = (tone + 1) >> 1;
        return (short)((half + 1) >> 1);
    }

    /// <summary>The texture of a rank: −8192 to 8191.</summary>
    public static short Texture(ushort rank) => (short)((rank >> 2) - 8192);
}
