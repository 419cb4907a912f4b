using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>One row of one ink of a chain: dots begin in the order of the array where those of the inks before it end.</summary>
internal static class IntervalKernel
{
    /// <summary>Screens a part of a row.</summary>
    /// <param name="lanes">Width to work with.</param>
    /// <param name="tones">Contone, up to the side of an array.</param>
    /// <param name="order">Ranks of a <see cref="ThresholdPlane"/> from the first column on, which is a multiple of 8.</param>
    /// <param name="mix">Shares of the drops.</param>
    /// <param name="bits">Bits of a dot.</param>
    /// <param name="taken">Share taken by the inks before, of 65 536, beginning anew beyond the whole; this ink's is added. In the order of the ranks.</param>
    /// <param name="target">Takes the dots; a last byte is filled up with 0.</param>
    public static void Row(
        Lanes lanes, ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> order, DropMix mix, int bits, Span<ushort> taken, Span<byte> target)
    {
        _ = lanes;
        Plain(tones, order, mix, bits, taken, target);
    }

    private static void Plain(ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> order, DropMix mix, int bits, Span<ushort> taken, Span<byte> target)
    {
        int last = (8 / bits) - 1;
        target[..(((tones.Length * bits) + 7) / 8)].Clear();
        for (int at = 0; at < tones.Length; at++)
        {
            int place = at ^ last;
            ushort threshold = ThresholdArray.Threshold((ushort)(order[place] - taken[place]));
            int code = 0;
            for (int step = 0; step < mix.Steps; step++)
                code += mix[step].Share(tones[at]) > threshold ? 1 : 0;
            target[at * bits / 8] |= (byte)(code << ((last - (at & last)) * bits));
            ushort share = mix[0].Share(tones[at]);
            taken[place] += (ushort)(share + (share >> 15));
        }
    }
}
