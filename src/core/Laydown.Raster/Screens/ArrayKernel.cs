using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>Contone against limits, packed: one row of one ink.</summary>
internal static class ArrayKernel
{
    private const int Turn = ThresholdArray.Side - 1;

    /// <summary>Screens a row.</summary>
    /// <param name="lanes">Width to work with.</param>
    /// <param name="tones">Contone.</param>
    /// <param name="planes">A plane of limits for each drop, smallest first: tone above the limit → at least that drop.</param>
    /// <param name="bits">Bits of a dot.</param>
    /// <param name="row">Row of the sheet.</param>
    /// <param name="column">Column of the sheet of the first value, 0 or more.</param>
    /// <param name="target">Takes the dots; a last byte is filled up with 0.</param>
    public static void Row(Lanes lanes, ReadOnlySpan<ushort> tones, ThresholdPlane[] planes, int bits, int row, int column, Span<byte> target)
    {
        int done = 0;
        if ((column & 7) == 0)
        {
            done = (lanes, bits) switch
            {
                (Lanes.Wide512, 1) => One512(tones, planes[0].Row(row), column, target),
                (Lanes.Wide512, 2) => Two512(tones, planes, row, column, target),
                (Lanes.Wide256, 1) => One256(tones, planes[0].Row(row), column, target),
                (Lanes.Wide256, 2) => Two256(tones, planes, row, column, target),
                _ => 0,
            };
        }

        Plain(tones[done..], planes, bits, row, column + done, target[(done * bits / 8)..]);
    }

    private static void Plain(ReadOnlySpan<ushort> tones, ThresholdPlane[] planes, int bits, int row, int column, Span<byte> target)
    {
        int last = (8 / bits) - 1;
        target[..(((tones.Length * bits) + 7) / 8)].Clear();
        for (int step = 0; step < planes.Length; step++)
        {
            ReadOnlySpan<ushort> limits = planes[step].Row(row);
            for (int at = 0; at < tones.Length; at++)
            {
                // Codes count up: each drop reached adds one.
                int dot = tones[at] > limits[((column + at) & Turn) ^ last] ? 1 : 0;
                target[at * bits / 8] += (byte)(dot << ((last - (at & last)) * bits));
            }
        }
    }

    private static int One512(ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> limits, int column, Span<byte> target)
    {
        ref ushort tone = ref MemoryMarshal.GetReference(tones);
        ref ushort limit = ref MemoryMarshal.GetReference(limits);
        ref byte dots = ref MemoryMarshal.GetReference(target[..(tones.Length / 8)]);
        Vector512<byte> turn = DotPacking.Turn512(1);
        int at = 0;
        for (; at + 64 <= tones.Length; at += 64)
        {
            nuint place = (nuint)((column + at) & Turn);
            uint low = (uint)Above(ref tone, (nuint)at, ref limit, place, turn);
            uint high = (uint)Above(ref tone, (nuint)at + 32, ref limit, place + 32, turn);
            Unsafe.WriteUnaligned(ref Unsafe.Add(ref dots, (nuint)at / 8), low);
            Unsafe.WriteUnaligned(ref Unsafe.Add(ref dots, ((nuint)at / 8) + 4), high);
        }

        return at;
    }

    private static ulong Above(ref ushort tone, nuint at, ref ushort limit, nuint place, Vector512<byte> turn) =>
        Vector512.GreaterThan(
            Avx512BW.Shuffle(Vector512.LoadUnsafe(ref tone, at).AsByte(), turn).AsUInt16(), Vector512.LoadUnsafe(ref limit, place)).ExtractMostSignificantBits();

    private static int Two512(ReadOnlySpan<ushort> tones, ThresholdPlane[] planes, int row, int column, Span<byte> target)
    {
        ref ushort tone = ref MemoryMarshal.GetReference(tones);
        ref ushort first = ref MemoryMarshal.GetReference(planes[0].Row(row));
        ref ushort second = ref MemoryMarshal.GetReference(planes[1].Row(row));
        ref byte dots = ref MemoryMarshal.GetReference(target[..(tones.Length / 4)]);
        ref ushort third = ref MemoryMarshal.GetReference(planes[^1].Row(row));
        Vector512<byte> turn = DotPacking.Turn512(2);
        ulong three = planes.Length == 3 ? uint.MaxValue : 0;
        int at = 0;
        for (; at + 32 <= tones.Length; at += 32)
        {
            nuint place = (nuint)((column + at) & Turn);
            Vector512<ushort> here = Avx512BW.Shuffle(Vector512.LoadUnsafe(ref tone, (nuint)at).AsByte(), turn).AsUInt16();
            ulong one = Vector512.GreaterThan(here, Vector512.LoadUnsafe(ref first, place)).ExtractMostSignificantBits();
            ulong two = Vector512.GreaterThan(here, Vector512.LoadUnsafe(ref second, place)).ExtractMostSignificantBits();
            ulong all = Vector512.GreaterThan(here, Vector512.LoadUnsafe(ref third, place)).ExtractMostSignificantBits() & three;
            Unsafe.WriteUnaligned(ref Unsafe.Add(ref dots, (nuint)at / 4), DotPacking.Codes(one, two, all));
        }

        return at;
    }

    private static int One256(ReadOnlySpan<ushort> tones, ReadOnlySpan<ushort> limits, int column, Span<byte> target)
    {
        ref ushort tone = ref MemoryMarshal.GetReference(tones);
        ref ushort limit = ref MemoryMarshal.GetReference(limits);
        Vector256<byte> turn = DotPacking.Turn256(1);
        int at = 0;
        for (; at + 32 <= tones.Length; at += 32)
        {
            nuint place = (nuint)((column + at) & Turn);
            Vector256<short> low = NotAbove(ref tone, (nuint)at, ref limit, place, turn);
            Vector256<short> high = NotAbove(ref tone, (nuint)at + 16, ref limit, place + 16, turn);
            BinaryPrimitives.WriteUInt32LittleEndian(target[(at / 8)..], ~DotPacking.Bits(low, high));
        }

        return at;
    }

    private static int Two256(ReadOnlySpan<ushort> tones, ThresholdPlane[] planes, int row, int column, Span<byte> target)
    {
        ref ushort tone = ref MemoryMarshal.GetReference(tones);
        Vector256<byte> turn = DotPacking.Turn256(2);
        int at = 0;
        for (; at + 32 <= tones.Length; at += 32)
        {
            // Each drop that is not reached counts −1.
            nuint place = (nuint)((column + at) & Turn);
            Vector256<short> low = Vector256.Create((short)planes.Length), high = low;
            for (int step = 0; step < planes.Length; step++)
            {
                ref ushort limit = ref MemoryMarshal.GetReference(planes[step].Row(row));
                low += NotAbove(ref tone, (nuint)at, ref limit, place, turn);
                high += NotAbove(ref tone, (nuint)at + 16, ref limit, place + 16, turn);
            }

            BinaryPrimitives.WriteUInt64LittleEndian(target[(at / 4)..], DotPacking.Codes(low, high));
        }

        return at;
    }

    // All bits set where the tone does not exceed the limit: there is no unsigned comparison, but a saturating difference.
    private static Vector256<short> NotAbove(ref ushort tone, nuint at, ref ushort limit, nuint place, Vector256<byte> turn)
    {
        Vector256<ushort> here = Avx2.Shuffle(Vector256.LoadUnsafe(ref tone, at).AsByte(), turn).AsUInt16();
        return Avx2.CompareEqual(Avx2.SubtractSaturate(here, Vector256.LoadUnsafe(ref limit, place)), Vector256<ushort>.Zero).AsInt16();
    }
}
