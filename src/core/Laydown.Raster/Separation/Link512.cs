using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Separation;

/// <summary>The link by AVX-512: places and corners of 16 pixels at once, inks of 4 pixels at once.</summary>
internal static unsafe class Link512
{
    private const int Lanes = 16;

    /// <summary>Places of a straight way.</summary>
    public static void Straight(ushort* from, int cells, int* places, int count)
    {
        for (int x = 0; x < count; x += Lanes)
        {
            Vector512<int> along = Avx512F.ConvertToVector512Int32(Vector256.Load(from + x)) * cells;
            (((along + (along >> 16)) + Vector512.Create(2)) >> 2).Store(places + x);
        }
    }

    /// <summary>Corners and weights of three channels.</summary>
    public static void Corners3(LinkNodes link, LinkBlock block, int count)
    {
        int s0 = link.Strides[0], s1 = link.Strides[1], s2 = link.Strides[2];
        Vector512<int> inside = Vector512.Create(LinkNodes.Whole - 1), whole = Vector512.Create(LinkNodes.Whole);
        Vector512<int> v0 = Vector512.Create(s0), v1 = Vector512.Create(s1), v2 = Vector512.Create(s2), all = v0 + v1 + v2;
        for (int x = 0; x < count; x += Lanes)
        {
            Vector512<int> p0 = Vector512.Load(block.PlacesOf(0) + x), p1 = Vector512.Load(block.PlacesOf(1) + x), p2 = Vector512.Load(block.PlacesOf(2) + x);
            Vector512<int> node = ((p0 >> LinkNodes.PartBits) * v0) + ((p1 >> LinkNodes.PartBits) * v1) + ((p2 >> LinkNodes.PartBits) * v2);
            Vector512<int> f0 = p0 & inside, f1 = p1 & inside, f2 = p2 & inside;
            Vector512<int> most = Avx512F.Max(Avx512F.Max(f0, f1), f2), least = Avx512F.Min(Avx512F.Min(f0, f1), f2), middle = f0 + f1 + f2 - most - least;

            // The first channel with the largest part goes first, the last with the smallest goes last: never the same one.
            Vector512<int> first = Vector512.ConditionalSelect(Vector512.Equals(f0, most), v0, Vector512.ConditionalSelect(Vector512.Equals(f1, most), v1, v2));
            Vector512<int> last = Vector512.ConditionalSelect(Vector512.Equals(f2, least), v2, Vector512.ConditionalSelect(Vector512.Equals(f1, least), v1, v0));
            node.Store(block.AtOf(0) + x);
            (node + first).Store(block.AtOf(1) + x);
            (node + all - last).Store(block.AtOf(2) + x);
            (node + all).Store(block.AtOf(3) + x);
            ((whole - most) | ((most - middle) << 16)).Store(block.PairsOf(0) + x);
            ((middle - least) | (least << 16)).Store(block.PairsOf(1) + x);
        }
    }

    /// <summary>Corners and weights of four channels: parts are sorted with their channel in the last two bits.</summary>
    public static void Corners4(LinkNodes link, LinkBlock block, int count)
    {
        Vector512<int> inside = Vector512.Create(LinkNodes.Whole - 1), whole = Vector512.Create(LinkNodes.Whole);
        Vector128<int> four = Vector128.Create(link.Strides);
        Vector512<int> steps = Vector512.Create(Vector256.Create(four, four), Vector256.Create(four, four));
        for (int x = 0; x < count; x += Lanes)
        {
            Vector512<int> p0 = Vector512.Load(block.PlacesOf(0) + x), p1 = Vector512.Load(block.PlacesOf(1) + x);
            Vector512<int> p2 = Vector512.Load(block.PlacesOf(2) + x), p3 = Vector512.Load(block.PlacesOf(3) + x);
            Vector512<int> node = ((p0 >> LinkNodes.PartBits) * link.Strides[0]) + ((p1 >> LinkNodes.PartBits) * link.Strides[1])
                + ((p2 >> LinkNodes.PartBits) * link.Strides[2]) + ((p3 >> LinkNodes.PartBits) * link.Strides[3]);
            Vector512<int> k0 = (p0 & inside) << 2, k1 = ((p1 & inside) << 2) | Vector512.Create(1);
            Vector512<int> k2 = ((p2 & inside) << 2) | Vector512.Create(2), k3 = ((p3 & inside) << 2) | Vector512.Create(3);
            (k0, k1) = (Avx512F.Max(k0, k1), Avx512F.Min(k0, k1));
            (k2, k3) = (Avx512F.Max(k2, k3), Avx512F.Min(k2, k3));
            (k0, k2) = (Avx512F.Max(k0, k2), Avx512F.Min(k0, k2));
            (k1, k3) = (Avx512F.Max(k1, k3), Avx512F.Min(k1, k3));
            (k1, k2) = (Avx512F.Max(k1, k2), Avx512F.Min(k1, k2));
            node.Store(block.AtOf(0) + x);
            (node += Step(steps, k0)).Store(block.AtOf(1) + x);
            (node += Step(steps, k1)).Store(block.AtOf(2) + x);
            (node += Step(steps, k2)).Store(block.AtOf(3) + x);
            (node + Step(steps, k3)).Store(block.AtOf(4) + x);
            Vector512<int> f0 = k0 >> 2, f1 = k1 >> 2, f2 = k2 >> 2, f3 = k3 >> 2;
            ((whole - f0) | ((f0 - f1) << 16)).Store(block.PairsOf(0) + x);
            ((f1 - f2) | ((f2 - f3) << 16)).Store(block.PairsOf(1) + x);
            f3.Store(block.PairsOf(2) + x);
        }
    }

    /// <summary>Inks from corners and weights: a quarter of a register holds the eight inks of a pixel, the next quarter those of the fourth pixel after it.</summary>
    public static void Mix(short* table, LinkBlock block, int count, bool five)
    {
        for (int x = 0; x < count; x += Lanes)
        {
            Vector512<short> z0 = Pixels(table, block, x, five, 0b00_00_00_00, 0), z1 = Pixels(table, block, x, five, 0b01_01_01_01, 1);
            Vector512<short> z2 = Pixels(table, block, x, five, 0b10_10_10_10, 2), z3 = Pixels(table, block, x, five, 0b11_11_11_11, 3);

            // Pixels of inks become inks of pixels: words, then pairs of words, then the quarters.
            Vector512<int> a = Avx512BW.UnpackLow(z0, z1).AsInt32(), b = Avx512BW.UnpackHigh(z0, z1).AsInt32();
            Vector512<int> c = Avx512BW.UnpackLow(z2, z3).AsInt32(), d = Avx512BW.UnpackHigh(z2, z3).AsInt32();
            Put(Avx512F.UnpackLow(a, c), block.To[0] + x, block.To[1] + x);
            Put(Avx512F.UnpackHigh(a, c), block.To[2] + x, block.To[3] + x);
            Put(Avx512F.UnpackLow(b, d), block.To[4] + x, block.To[5] + x);
            Put(Avx512F.UnpackHigh(b, d), block.To[6] + x, block.To[7] + x);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<int> Step(Vector512<int> steps, Vector512<int> key) =>
        Avx512F.PermuteVar4x32(steps.AsSingle(), key & Vector512.Create(3)).AsInt32();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<short> Pixels(short* table, LinkBlock block, int x, bool five, [ConstantExpected] byte spread, int pixel)
    {
        Vector512<short> n0 = Nodes(table, block.AtOf(0) + x + pixel), n1 = Nodes(table, block.AtOf(1) + x + pixel);
        Vector512<short> n2 = Nodes(table, block.AtOf(2) + x + pixel), n3 = Nodes(table, block.AtOf(3) + x + pixel);
        Vector512<short> w0 = Avx512F.Shuffle(Vector512.Load(block.PairsOf(0) + x), spread).AsInt16();
        Vector512<short> w1 = Avx512F.Shuffle(Vector512.Load(block.PairsOf(1) + x), spread).AsInt16();
        Vector512<int> low = Avx512BW.MultiplyAddAdjacent(Avx512BW.UnpackLow(n0, n1), w0) + Avx512BW.MultiplyAddAdjacent(Avx512BW.UnpackLow(n2, n3), w1);
        Vector512<int> high = Avx512BW.MultiplyAddAdjacent(Avx512BW.UnpackHigh(n0, n1), w0) + Avx512BW.MultiplyAddAdjacent(Avx512BW.UnpackHigh(n2, n3), w1);
        if (five)
        {
            Vector512<short> n4 = Nodes(table, block.AtOf(4) + x + pixel);
            Vector512<short> w2 = Avx512F.Shuffle(Vector512.Load(block.PairsOf(2) + x), spread).AsInt16();
            low += Avx512BW.MultiplyAddAdjacent(Avx512BW.UnpackLow(n4, n4), w2);
            high += Avx512BW.MultiplyAddAdjacent(Avx512BW.UnpackHigh(n4, n4), w2);
        }

        return Avx512BW.PackSignedSaturate(low >> LinkNodes.PartBits, high >> LinkNodes.PartBits) ^ Vector512.Create(short.MinValue);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<short> Nodes(short* table, int* at) =>
        Vector512.Create(
            Vector256.Create(Vector128.Load(table + (uint)at[0]), Vector128.Load(table + (uint)at[4])),
            Vector256.Create(Vector128.Load(table + (uint)at[8]), Vector128.Load(table + (uint)at[12])));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Put(Vector512<int> two, ushort* one, ushort* other)
    {
        Vector512<ushort> sorted = Avx512F.PermuteVar8x64(two.AsInt64(), Vector512.Create(0L, 2, 4, 6, 1, 3, 5, 7)).AsUInt16();
        sorted.GetLower().Store(one);
        sorted.GetUpper().Store(other);
    }
}
