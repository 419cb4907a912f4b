using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Laydown.Layout.Contours;

/// <summary>How much two forms are in each other's way, one shifted against the other.</summary>
/// <remarks>
/// Whether they overlap is exact on the sides, how much is weighed by the circles: the sum over pairs of circles of depth times the
/// smaller radius, with a tail that fades for circles apart, under a square root, times the geometric mean of the roots of the hulls'
/// areas. [Gardeyn2025]
/// </remarks>
internal static class PairTest
{
    private const float TailShare = 0.01f;

    /// <summary>0 where the two are apart; else over 0, more where they are deeper in each other.</summary>
    /// <param name="a">The one that is shifted.</param>
    /// <param name="b">The other.</param>
    /// <param name="dx">Shift of <paramref name="a"/> against <paramref name="b"/>.</param>
    /// <param name="dy">The same, upward.</param>
    internal static float Loss(Turned a, Turned b, float dx, float dy)
    {
        float loss = Weigh(a, b, dx, dy, out float deepest);
        return deepest > 0 || Meet(a, b, dx, dy) ? loss : 0;
    }

    /// <summary>The weight of the circles, over 0 also for forms apart; <paramref name="deepest"/> is the most two circles overlap.</summary>
    internal static float Weigh(Turned a, Turned b, float dx, float dy, out float deepest)
    {
        float tail = Math.Max(a.Form.Reach, b.Form.Reach) * TailShare;
        Vector256<float> tails = Vector256.Create(tail), twice = Vector256.Create(2 * tail), square = Vector256.Create(tail * tail);
        Vector256<float> sum = Vector256<float>.Zero, most = Vector256.Create(float.MinValue);
        ref float bx = ref MemoryMarshal.GetArrayDataReference(b.PoleX);
        ref float by = ref MemoryMarshal.GetArrayDataReference(b.PoleY);
        ref float br = ref MemoryMarshal.GetArrayDataReference(b.PoleR);
        for (int i = 0; i < a.Form.Poles.Count; i++)
        {
            Vector256<float> x = Vector256.Create(a.PoleX[i] + dx), y = Vector256.Create(a.PoleY[i] + dy), r = Vector256.Create(a.PoleR[i]);
            for (nuint j = 0; j < (nuint)b.PoleX.Length; j += Turned.Lanes)
            {
                Vector256<float> ex = Vector256.LoadUnsafe(ref bx, j) - x, ey = Vector256.LoadUnsafe(ref by, j) - y, s = Vector256.LoadUnsafe(ref br, j);
                Vector256<float> depth = r + s - Vector256.Sqrt((ex * ex) + (ey * ey));
                Vector256<float> fading = square / Vector256.Max(twice - depth, tails);
                sum += Vector256.ConditionalSelect(Vector256.GreaterThanOrEqual(depth, tails), depth, fading) * Vector256.Min(r, s);
                most = Vector256.Max(most, depth);
            }
        }

        deepest = float.MinValue;
        for (int lane = 0; lane < Turned.Lanes; lane++)
            deepest = Math.Max(deepest, most[lane]);
        return MathF.Sqrt(Vector256.Sum(sum) + (tail * tail)) * MathF.Sqrt(a.Form.HullRoot * b.Form.HullRoot);
    }

    /// <summary>Whether sides cross or touch, or one lies in the material of the other.</summary>
    internal static bool Meet(Turned a, Turned b, float dx, float dy)
    {
        // Only sides that reach into the box both share can cross.
        float left = Math.Max(a.MinX + dx, b.MinX), right = Math.Min(a.MaxX + dx, b.MaxX);
        float bottom = Math.Max(a.MinY + dy, b.MinY), top = Math.Min(a.MaxY + dy, b.MaxY);
        if (left > right || bottom > top)
            return false;
        for (int i = 0; i < a.Sides; i++)
        {
            float x = a.X[i] + dx, y = a.Y[i] + dy, u = a.U[i], v = a.V[i];
            if (Math.Max(x, x + u) < left || Math.Min(x, x + u) > right || Math.Max(y, y + v) < bottom || Math.Min(y, y + v) > top)
                continue;
            if (Crosses(b, x, y, u, v))
                return true;
        }

        return Nested(a, b, dx, dy);
    }

    /// <summary>Whether a corner of one lies in the material of the other, for forms whose sides do not cross.</summary>
    internal static bool Nested(Turned a, Turned b, float dx, float dy)
    {
        foreach (int start in a.Starts)
        {
            if (b.Holds(a.X[start] + dx, a.Y[start] + dy))
                return true;
        }

        foreach (int start in b.Starts)
        {
            if (a.Holds(b.X[start] - dx, b.Y[start] - dy))
                return true;
        }

        return false;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Crosses(Turned b, float x, float y, float u, float v)
    {
        Vector256<float> px = Vector256.Create(x), py = Vector256.Create(y), pu = Vector256.Create(u), pv = Vector256.Create(v);
        ref float bx = ref MemoryMarshal.GetArrayDataReference(b.X);
        ref float by = ref MemoryMarshal.GetArrayDataReference(b.Y);
        ref float bu = ref MemoryMarshal.GetArrayDataReference(b.U);
        ref float bv = ref MemoryMarshal.GetArrayDataReference(b.V);
        for (nuint j = 0; j < (nuint)b.X.Length; j += Turned.Lanes)
        {
            Vector256<float> qu = Vector256.LoadUnsafe(ref bu, j), qv = Vector256.LoadUnsafe(ref bv, j);
            Vector256<float> rx = Vector256.LoadUnsafe(ref bx, j) - px, ry = Vector256.LoadUnsafe(ref by, j) - py;
            Vector256<float> d = (pu * qv) - (pv * qu), sign = d & Vector256.Create(-0f);
            Vector256<float> s = ((rx * qv) - (ry * qu)) ^ sign, t = ((rx * pv) - (ry * pu)) ^ sign;
            Vector256<float> size = d ^ sign;
            Vector256<float> hit = Vector256.GreaterThanOrEqual(s, Vector256<float>.Zero) & Vector256.LessThanOrEqual(s, size)
                & Vector256.GreaterThanOrEqual(t, Vector256<float>.Zero) & Vector256.LessThanOrEqual(t, size)
                & Vector256.GreaterThan(size, Vector256<float>.Zero);
            if (hit.ExtractMostSignificantBits() != 0)
                return true;
        }

        return false;
    }
}
