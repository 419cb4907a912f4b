using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>One row of one ink of a chain: dots begin in the order of the array where those of the inks before it end.</summary>
internal static class IntervalKernel
{
    private const int Turn = ThresholdArray.Side - 1;

    /// <summary>Screens a part of a row.</summary>
    /// <param name="lanes">Width to work with.</param>
    /// <param name="tones">Contone.</param>
    /// <param name="order">Ranks: a row of a <see cref="ThresholdPlane"/>.</param>
    /// <param name="column">Column of the sheet of the first value, a multiple of 8.</param>
    /// <param name="mix">Shares of the drops.</param>
    /// <param name="bits">Bits of a dot.</param>
    /// <param name="taken">Share taken by the inks before, of 65 536, beginning anew beyond the whole; this ink's is added. Groups of
    /// columns turned round as the ranks are, a whole one at the end.</param>
    /// <param name="target">Takes the dots; a last byte is filled up with 0.</param>
    public static void Row(
        Lanes lanes, ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> order, int column, DropMix mix, int bits, Span<ushort> taken, Span<byte> target)
    {
        int done = lanes switch
        {
            Lanes.Wide512 => Wide512(tones, order, column, mix, bits, taken, target),
            Lanes.Wide256 => Wide256(tones, order, column, mix, bits, taken, target),
            _ => 0,
        };
        Plain(tones[done..], order, column + done, mix, bits, taken[done..], target[(done * bits / 8)..]);
    }

    private static void Plain(ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> order, int column, DropMix mix, int bits, Span<ushort> taken, Span<byte> target)
    {
        int last = (8 / bits) - 1;
        target[..(((tones.Length * bits) + 7) / 8)].Clear();
        for (int at = 0; at < tones.Length; at++)
        {
            int place = at ^ last;
            ushort threshold = ThresholdArray.Threshold((ushort)(order[(column + place) & Turn] - taken[place]));
            int code = 0;
            for (int step = 0; step < mix.Steps; step++)
                code += mix[step].Share(tones[at]) > threshold ? 1 : 0;
            target[at * bits / 8] |= (byte)(code << ((last - (at & last)) * bits));
            ushort share = mix[0].Share(tones[at]);
            taken[place] += (ushort)(share + (share >> 15));
        }
    }

    private static int Wide512(ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> order, int column, DropMix mix, int bits, Span<ushort> taken, Span<byte> target)
    {
        ref ushort tone = ref MemoryMarshal.GetReference(tones);
        ref ushort rank = ref MemoryMarshal.GetReference(order);
        ref ushort used = ref MemoryMarshal.GetReference(taken);
        Vector512<byte> turn = DotPacking.Turn512(bits);
        Ramp512 one = new(mix[0]), two = new(mix[Math.Min(1, mix.Steps - 1)]), three = new(mix[mix.Steps - 1]);
        ulong all = mix.Steps == 3 ? uint.MaxValue : 0;
        int at = 0;
        for (; at + 32 <= tones.Length; at += 32)
        {
            Vector512<ushort> here = Avx512BW.Shuffle(Vector512.LoadUnsafe(ref tone, (nuint)at).AsByte(), turn).AsUInt16();
            Vector512<ushort> before = Vector512.LoadUnsafe(ref used, (nuint)at);
            Vector512<ushort> turned = Vector512.LoadUnsafe(ref rank, (nuint)((column + at) & Turn)) - before;
            Vector512<ushort> threshold = turned - (turned >>> 15);
            Vector512<ushort> share = bits == 1 ? here : one.Share(here);
            (before + share + (share >>> 15)).StoreUnsafe(ref used, (nuint)at);
            ulong first = Vector512.GreaterThan(share, threshold).ExtractMostSignificantBits();
            if (bits == 1)
            {
                BinaryPrimitives.WriteUInt32LittleEndian(target[(at / 8)..], (uint)first);
                continue;
            }

            ulong second = Vector512.GreaterThan(two.Share(here), threshold).ExtractMostSignificantBits();
            ulong third = all == 0 ? 0 : Vector512.GreaterThan(three.Share(here), threshold).ExtractMostSignificantBits();
            BinaryPrimitives.WriteUInt64LittleEndian(target[(at / 4)..], DotPacking.Codes(first, second, third));
        }

        return at;
    }

    private static int Wide256(ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> order, int column, DropMix mix, int bits, Span<ushort> taken, Span<byte> target)
    {
        Vector256<byte> turn = DotPacking.Turn256(bits);
        int at = 0;
        for (; at + 32 <= tones.Length; at += 32)
        {
            Vector256<short> low = Codes256(tones[at..], order[((column + at) & Turn)..], mix, bits, taken[at..], turn);
            Vector256<short> high = Codes256(tones[(at + 16)..], order[((column + at + 16) & Turn)..], mix, bits, taken[(at + 16)..], turn);
            if (bits == 1)
                BinaryPrimitives.WriteUInt32LittleEndian(target[(at / 8)..], DotPacking.Bits(-low, -high));
            else
                BinaryPrimitives.WriteUInt64LittleEndian(target[(at / 4)..], DotPacking.Codes(low, high));
        }

        return at;
    }

    private static Vector256<short> Codes256(
        ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> order, DropMix mix, int bits, Span<ushort> taken, Vector256<byte> turn)
    {
        Vector256<ushort> here = Avx2.Shuffle(Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(tones)).AsByte(), turn).AsUInt16();
        ref ushort used = ref MemoryMarshal.GetReference(taken);
        Vector256<ushort> before = Vector256.LoadUnsafe(ref used);
        Vector256<ushort> turned = Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(order)) - before;
        Vector256<ushort> threshold = turned - (turned >>> 15);
        Vector256<ushort> share = bits == 1 ? here : Share256(here, mix[0]);
        (before + share + (share >>> 15)).StoreUnsafe(ref used);
        Vector256<short> codes = Reached(share, threshold);
        for (int step = 1; step < mix.Steps; step++)
            codes += Reached(Share256(here, mix[step]), threshold);
        return codes;
    }

    // 1 where the share exceeds the threshold, else 0.
    private static Vector256<short> Reached(Vector256<ushort> share, Vector256<ushort> threshold) =>
        Vector256<short>.One + Avx2.CompareEqual(Avx2.SubtractSaturate(share, threshold), Vector256<ushort>.Zero).AsInt16();

    private static unsafe Vector256<ushort> Share256(Vector256<ushort> tones, DropRamp ramp)
    {
        // Base and rise of each tone's part are fetched together, for the even and the odd places; then sorted apart.
        fixed (uint* both = ramp.Both)
        {
            Vector256<uint> parts = (tones >>> 10).AsUInt32();
            Vector256<uint> even = Avx2.GatherVector256(both, (parts & Vector256.Create(0xFFFFu)).AsInt32(), 4);
            Vector256<uint> odd = Avx2.GatherVector256(both, (parts >>> 16).AsInt32(), 4);
            Vector256<ushort> bases = Avx2.Blend(even.AsUInt16(), (odd << 16).AsUInt16(), 0b10101010);
            Vector256<ushort> rises = Avx2.Blend((even >>> 16).AsUInt16(), odd.AsUInt16(), 0b10101010);
            return bases + Avx2.MultiplyHigh(tones << 6, rises);
        }
    }

    // A ramp in registers: two times 32 parts for bases and rises.
    private readonly struct Ramp512(DropRamp ramp)
    {
        private readonly Vector512<ushort> baseLow = Vector512.Create(ramp.Bases[..32]);
        private readonly Vector512<ushort> baseHigh = Vector512.Create(ramp.Bases[32..]);
        private readonly Vector512<ushort> riseLow = Vector512.Create(ramp.Rises[..32]);
        private readonly Vector512<ushort> riseHigh = Vector512.Create(ramp.Rises[32..]);

        public Vector512<ushort> Share(Vector512<ushort> tones)
        {
            Vector512<ushort> part = tones >>> 10;
            Vector512<ushort> start = Avx512BW.PermuteVar32x16x2(baseLow, part, baseHigh);
            return start + Avx512BW.MultiplyHigh(tones << 6, Avx512BW.PermuteVar32x16x2(riseLow, part, riseHigh));
        }
    }
}
