using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Laydown.Layout.Contours;

/// <summary>What <see cref="PairTest"/> says of two forms at fixed angles, for all shifts of the first against the second: filled as it is asked.</summary>
/// <remarks>
/// The shifts at which the boxes of the two touch are cut into cells. A cell is free, or hit throughout, or keeps the pairs of sides that
/// can cross within it: each pair crosses on a parallelogram of shifts, eight of which are tested at once. The weight is read between
/// the four corners of the cell. Threads may fill the same cell twice, with the same contents.
/// </remarks>
internal sealed class PairTable
{
    private const int Numbers = 7, Group = Numbers * Turned.Lanes;

    private readonly Turned a, b;
    private readonly int cells;
    private readonly float left, bottom, wide, high, perWide, perHigh;
    private readonly float[]?[] content;
    private readonly float[] weights;
    private readonly bool mayNest;

    internal PairTable(Turned a, Turned b, int cells)
    {
        (this.a, this.b, this.cells) = (a, b, cells);
        (left, bottom) = (b.MinX - a.MaxX, b.MinY - a.MaxY);
        (wide, high) = ((b.MaxX - a.MinX - left) / cells, (b.MaxY - a.MinY - bottom) / cells);
        (perWide, perHigh) = (1 / wide, 1 / high);
        content = new float[]?[cells * cells];
        weights = new float[(cells + 1) * (cells + 1)];
        mayNest = a.Starts.Length > 1 || b.Starts.Length > 1
            || (a.Width <= b.Width && a.Height <= b.Height) || (b.Width <= a.Width && b.Height <= a.Height);
    }

    private static float[] Free { get; } = [];

    private static float[] Hit { get; } = [1];

    internal float Loss(float dx, float dy)
    {
        float x = (dx - left) * perWide, y = (dy - bottom) * perHigh;
        if (!(x >= 0 && y >= 0 && x < cells && y < cells))
            return 0;
        int column = (int)x, row = (int)y;
        float[] cell = content[(row * cells) + column] ?? Fill(column, row);
        if (cell.Length == 0)
            return 0;
        return cell.Length == 1 || Crosses(cell, dx, dy) || (mayNest && PairTest.Nested(a, b, dx, dy))
            ? Weight(column, row, x - column, y - row)
            : 0;
    }

    private static bool Crosses(float[] cell, float dx, float dy)
    {
        Vector256<float> x = Vector256.Create(dx), y = Vector256.Create(dy);
        ref float at = ref MemoryMarshal.GetArrayDataReference(cell);
        for (nuint g = 0; g < (nuint)cell.Length; g += Group)
        {
            Vector256<float> size = Vector256.LoadUnsafe(ref at, g + 48);
            Vector256<float> t = Vector256.LoadUnsafe(ref at, g + 16) - (x * Vector256.LoadUnsafe(ref at, g + 8)) + (y * Vector256.LoadUnsafe(ref at, g));
            Vector256<float> s = Vector256.LoadUnsafe(ref at, g + 40) - (x * Vector256.LoadUnsafe(ref at, g + 32)) + (y * Vector256.LoadUnsafe(ref at, g + 24));
            Vector256<float> hit = Vector256.GreaterThanOrEqual(s, Vector256<float>.Zero) & Vector256.LessThanOrEqual(s, size)
                & Vector256.GreaterThanOrEqual(t, Vector256<float>.Zero) & Vector256.LessThanOrEqual(t, size);
            if (hit.ExtractMostSignificantBits() != 0)
                return true;
        }

        return false;
    }

    private float Weight(int column, int row, float x, float y)
    {
        int at = (row * (cells + 1)) + column;
        float low = Corner(at, column, row), lowRight = Corner(at + 1, column + 1, row);
        float high = Corner(at + cells + 1, column, row + 1), highRight = Corner(at + cells + 2, column + 1, row + 1);
        float below = low + (x * (lowRight - low)), above = high + (x * (highRight - high));
        return below + (y * (above - below));
    }

    private float Corner(int at, int column, int row)
    {
        float weight = weights[at];
        if (weight == 0)
            weights[at] = weight = PairTest.Weigh(a, b, left + (column * wide), bottom + (row * high), out _);
        return weight;
    }

    private float[] Fill(int column, int row)
    {
        float x = left + ((column + 0.5f) * wide), y = bottom + ((row + 0.5f) * high);
        _ = PairTest.Weigh(a, b, x, y, out float deepest);
        float[] cell = deepest > 0.5001f * MathF.Sqrt((wide * wide) + (high * high)) ? Hit : Pairs(x, y);
        return content[(row * cells) + column] = cell;
    }

    private float[] Pairs(float x, float y)
    {
        float halfWide = wide * 0.5001f, halfHigh = high * 0.5001f;
        List<float[]> pairs = [];
        for (int i = 0; i < a.Sides; i++)
        {
            float ux = a.U[i], uy = a.V[i];
            for (int j = 0; j < b.Sides; j++)
            {
                float rx = b.X[j] - a.X[i], ry = b.Y[j] - a.Y[i], vx = b.U[j], vy = b.V[j];
                if (rx + Math.Max(0, vx) + Math.Max(0, -ux) < x - halfWide || rx + Math.Min(0, vx) + Math.Min(0, -ux) > x + halfWide
                    || ry + Math.Max(0, vy) + Math.Max(0, -uy) < y - halfHigh || ry + Math.Min(0, vy) + Math.Min(0, -uy) > y + halfHigh)
                    continue;
                float d = (ux * vy) - (uy * vx);
                if (d == 0)
                    continue;
                float sign = Math.Sign(d);
                float[] pair = [sign * ux, sign * uy, sign * ((rx * uy) - (ry * ux)), sign * vx, sign * vy, sign * ((rx * vy) - (ry * vx)), sign * d];
                (float leastT, float mostT) = Range(pair[2], pair[0], pair[1], x, y, halfWide, halfHigh);
                (float leastS, float mostS) = Range(pair[5], pair[3], pair[4], x, y, halfWide, halfHigh);
                if (leastT > 0 && mostT < pair[6] && leastS > 0 && mostS < pair[6])
                    return Hit;
                if (!(mostT < 0 || leastT > pair[6] || mostS < 0 || leastS > pair[6]))
                    pairs.Add(pair);
            }
        }

        if (pairs.Count == 0)
            return mayNest && PairTest.Nested(a, b, x, y) ? Hit : Free;
        return Packed(pairs);
    }

    private static (float Least, float Most) Range(float constant, float ux, float uy, float x, float y, float halfWide, float halfHigh)
    {
        float middle = constant - (x * uy) + (y * ux), reach = (halfWide * Math.Abs(uy)) + (halfHigh * Math.Abs(ux));
        return (middle - reach, middle + reach);
    }

    private static float[] Packed(List<float[]> pairs)
    {
        int groups = (pairs.Count + Turned.Lanes - 1) / Turned.Lanes;
        float[] packed = new float[groups * Group];
        Array.Fill(packed, float.NaN);
        for (int i = 0; i < pairs.Count; i++)
        {
            for (int n = 0; n < Numbers; n++)
                packed[(i / Turned.Lanes * Group) + (n * Turned.Lanes) + (i % Turned.Lanes)] = pairs[i][n];
        }

        return packed;
    }
}
