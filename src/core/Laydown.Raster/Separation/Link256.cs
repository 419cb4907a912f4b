using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Separation;

/// <summary>The link by AVX2: places and corners of 8 pixels at once, inks of 2 pixels at once.</summary>
internal static unsafe class Link256
{
    private const int Lanes = 8;

    /// <summary>Places of a straight way.</summary>
    public static void Straight(ushort* from, int cells, int* places, int count)
    {
        for (int x = 0; x < count; x += Lanes)
        {
            Vector256<int> along = Avx2.ConvertToVector256Int32(from + x) * cells;
            (((along + (along >> 16)) + Vector256.Create(2)) >> 2).Store(places + x);
        }
    }

    /// <summary>Corners and weights of three channels.</summary>
    public static void Corners3(LinkNodes link, LinkBlock block, int count)
    {
        int s0 = link.Strides[0], s1 = link.Strides[1], s2 = link.Strides[2];
        Vector256<int> inside = Vector256.Create(LinkNodes.Whole - 1), whole = Vector256.Create(LinkNodes.Whole);
        Vector256<int> v0 = Vector256.Create(s0), v1 = Vector256.Create(s1), v2 = Vector256.Create(s2), all = v0 + v1 + v2;
        for (int x = 0; x < count; x += Lanes)
        {
            Vector256<int> p0 = Vector256.Load(block.PlacesOf(0) + x), p1 = Vector256.Load(block.PlacesOf(1) + x), p2 = Vector256.Load(block.PlacesOf(2) + x);
            Vector256<int> node = ((p0 >> LinkNodes.PartBits) * v0) + ((p1 >> LinkNodes.PartBits) * v1) + ((p2 >> LinkNodes.PartBits) * v2);
            Vector256<int> f0 = p0 & inside, f1 = p1 & inside, f2 = p2 & inside;
            Vector256<int> most = Avx2.Max(Avx2.Max(f0, f1), f2), least = Avx2.Min(Avx2.Min(f0, f1), f2), middle = f0 + f1 + f2 - most - least;

            // The first channel with the largest part goes first, the last with the smallest goes last: never the same one.
            Vector256<int> first = Vector256.ConditionalSelect(Vector256.Equals(f0, most), v0, Vector256.ConditionalSelect(Vector256.Equals(f1, most), v1, v2));
            Vector256<int> last = Vector256.ConditionalSelect(Vector256.Equals(f2, least), v2, Vector256.ConditionalSelect(Vector256.Equals(f1, least), v1, v0));
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
        Vector256<int> inside = Vector256.Create(LinkNodes.Whole - 1), whole = Vector256.Create(LinkNodes.Whole);
        Vector256<int> steps = Vector256.Create(Vector128.Create(link.Strides), Vector128.Create(link.Strides));
        for (int x = 0; x < count; x += Lanes)
        {
            Vector256<int> p0 = Vector256.Load(block.PlacesOf(0) + x), p1 = Vector256.Load(block.PlacesOf(1) + x);
            Vector256<int> p2 = Vector256.Load(block.PlacesOf(2) + x), p3 = Vector256.Load(block.PlacesOf(3) + x);
            Vector256<int> node = ((p0 >> LinkNodes.PartBits) * link.Strides[0]) + ((p1 >> LinkNodes.PartBits) * link.Strides[1])
                + ((p2 >> LinkNodes.PartBits) * link.Strides[2]) + ((p3 >> LinkNodes.PartBits) * link.Strides[3]);
            Vector256<int> k0 = (p0 & inside) << 2, k1 = ((p1 & inside) << 2) | Vector256.Create(1);
            Vector256<int> k2 = ((p2 & inside) << 2) | Vector256.Create(2), k3 = ((p3 & inside) << 2) | Vector256.Create(3);
            (k0, k1) = (Avx2.Max(k0, k1), Avx2.Min(k0, k1));
            (k2, k3) = (Avx2.Max(k2, k3), Avx2.Min(k2, k3));
            (k0, k2) = (Avx2.Max(k0, k2), Avx2.Min(k0, k2));
            (k1, k3) = (Avx2.Max(k1, k3), Avx2.Min(k1, k3));
            (k1, k2) = (Avx2.Max(k1, k2), Avx2.Min(k1, k2));
            node.Store(block.AtOf(0) + x);
            (node += Step(steps, k0)).Store(block.AtOf(1) + x);
            (node += Step(steps, k1)).Store(block.AtOf(2) + x);
            (node += Step(steps, k2)).Store(block.AtOf(3) + x);
            (node + Step(steps, k3)).Store(block.AtOf(4) + x);
            Vector256<int> f0 = k0 >> 2, f1 = k1 >> 2, f2 = k2 >> 2, f3 = k3 >> 2;
            ((whole - f0) | ((f0 - f1) << 16)).Store(block.PairsOf(0) + x);
            ((f1 - f2) | ((f2 - f3) << 16)).Store(block.PairsOf(1) + x);
            f3.Store(block.PairsOf(2) + x);
        }
    }

    /// <summary>Inks from corners and weights: half a register holds the eight inks of a pixel, its other half those of the fourth pixel after it.</summary>
    public static void Mix(short* table, LinkBlock block, int count, bool five)
    {
        for (int x = 0; x < count; x += Lanes)
        {
            Vector256<short> z0 = Pixels(table, block, x, five, 0b00_00_00_00, 0), z1 = Pixels(table, block, x, five, 0b01_01_01_01, 1);
            Vector256<short> z2 = Pixels(table, block, x, five, 0b10_10_10_10, 2), z3 = Pixels(table, block, x, five, 0b11_11_11_11, 3);

            // Pixels of inks become inks of pixels: words, then pairs of words, then the two halves.
            Vector256<int> a = Avx2.UnpackLow(z0, z1).AsInt32(), b = Avx2.UnpackHigh(z0, z1).AsInt32();
            Vector256<int> c = Avx2.UnpackLow(z2, z3).AsInt32(), d = Avx2.UnpackHigh(z2, z3).AsInt32();
            Put(Avx2.UnpackLow(a, c), block.To[0] + x, block.To[1] + x);
            Put(Avx2.UnpackHigh(a, c), block.To[2] + x, block.To[3] + x);
            Put(Avx2.UnpackLow(b, d), block.To[4] + x, block.To[5] + x);
            Put(Avx2.UnpackHigh(b, d), block.To[6] + x, block.To[7] + x);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<int> Step(Vector256<int> steps, Vector256<int> key) =>
        Avx.PermuteVar(steps.AsSingle(), key & Vector256.Create(3)).AsInt32();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<short> Pixels(short* table, LinkBlock block, int x, bool five, [ConstantExpected] byte spread, int pixel)
    {
        Vector256<short> n0 = Nodes(table, block.AtOf(0) + x + pixel), n1 = Nodes(table, block.AtOf(1) + x + pixel);
        Vector256<short> n2 = Nodes(table, block.AtOf(2) + x + pixel), n3 = Nodes(table, block.AtOf(3) + x + pixel);
        Vector256<short> w0 = Avx2.Shuffle(Vector256.Load(block.PairsOf(0) + x), spread).AsInt16();
        Vector256<short> w1 = Avx2.Shuffle(Vector256.Load(block.PairsOf(1) + x), spread).AsInt16();
        Vector256<int> low = Avx2.MultiplyAddAdjacent(Avx2.UnpackLow(n0, n1), w0) + Avx2.MultiplyAddAdjacent(Avx2.UnpackLow(n2, n3), w1);
        Vector256<int> high = Avx2.MultiplyAddAdjacent(Avx2.UnpackHigh(n0, n1), w0) + Avx2.MultiplyAddAdjacent(Avx2.UnpackHigh(n2, n3), w1);
        if (five)
        {
            Vector256<short> n4 = Nodes(table, block.AtOf(4) + x + pixel);
            Vector256<short> w2 = Avx2.Shuffle(Vector256.Load(block.PairsOf(2) + x), spread).AsInt16();
            low += Avx2.MultiplyAddAdjacent(Avx2.UnpackLow(n4, n4), w2);
            high += Avx2.MultiplyAddAdjacent(Avx2.UnpackHigh(n4, n4), w2);
        }

        return Avx2.PackSignedSaturate(low >> LinkNodes.PartBits, high >> LinkNodes.PartBits) ^ Vector256.Create(short.MinValue);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<short> Nodes(short* table, int* at) =>
        Vector256.Create(Vector128.Load(table + (uint)at[0]), Vector128.Load(table + (uint)at[4]));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Put(Vector256<int> two, ushort* one, ushort* other)
    {
        Vector256<ushort> sorted = Avx2.Permute4x64(two.AsInt64(), 0b11_01_10_00).AsUInt16();
        sorted.GetLower().Store(one);
        sorted.GetUpper().Store(other);
    }
}
