using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Takes corners out of rings so that material is only ever added: what fits the simpler shape fits the drawn one.</summary>
/// <remarks>
/// Two moves, always the one that adds least area first: an inward corner is cut off, or a side between two outward corners is left out
/// and its neighbours are drawn out until they meet. A move that would cross another side is not made. The way of working is common
/// practice; simplifying outward for layouts as in [Gardeyn2025].
/// </remarks>
internal static class OutwardRings
{
    private readonly record struct Move(int Ring, int At, double Area, bool DrawsOut, PointMm Meeting);

    internal static List<List<PointMm>> Simplify(List<List<PointMm>> rings, double mostArea)
    {
        List<List<PointMm>> result = [.. rings.Select(r => new List<PointMm>(r))];
        HashSet<(int, PointMm, PointMm)> barred = [];
        double left = mostArea;
        while (Cheapest(result, barred, left) is { } move)
        {
            List<PointMm> ring = result[move.Ring];
            if (!IsClear(result, move))
            {
                barred.Add((move.Ring, ring[move.At], ring[(move.At + 1) % ring.Count]));
                continue;
            }

            left -= move.Area;
            if (move.DrawsOut)
                ring[move.At] = move.Meeting;
            ring.RemoveAt(move.DrawsOut ? (move.At + 1) % ring.Count : move.At);
        }

        return result;
    }

    private static Move? Cheapest(List<List<PointMm>> rings, HashSet<(int, PointMm, PointMm)> barred, double most)
    {
        Move? best = null;
        for (int r = 0; r < rings.Count; r++)
        {
            List<PointMm> ring = rings[r];
            for (int i = 0; i < ring.Count && ring.Count > 3; i++)
            {
                Move move = MoveAt(ring, r, i);
                if (move.Area <= most && move.Area < (best?.Area ?? double.MaxValue) && !barred.Contains((r, ring[i], ring[(i + 1) % ring.Count])))
                    best = move;
            }
        }

        return best;
    }

    private static Move MoveAt(List<PointMm> ring, int r, int i)
    {
        int n = ring.Count;
        PointMm a = ring[(i + n - 1) % n], b = ring[i], c = ring[(i + 1) % n], d = ring[(i + 2) % n];
        double turn = Rings.Turn(a, b, c);
        if (turn <= 0)
            return new(r, i, -turn / 2, false, default);
        if (Rings.Turn(b, c, d) <= 0)
            return new(r, i, double.MaxValue, false, default);

        // The neighbours of the side meet outside only where both turns together stay under half a turn.
        double ux = b.XMm - a.XMm, uy = b.YMm - a.YMm, vx = c.XMm - d.XMm, vy = c.YMm - d.YMm;
        double cross = (ux * vy) - (uy * vx);
        double along = (((c.XMm - b.XMm) * vy) - ((c.YMm - b.YMm) * vx)) / cross;
        if (!(cross < 0) || !(along > 0) || !double.IsFinite(along))
            return new(r, i, double.MaxValue, false, default);
        PointMm meeting = new(b.XMm + (along * ux), b.YMm + (along * uy));
        return new(r, i, Math.Abs(Rings.Turn(b, meeting, c)) / 2, true, meeting);
    }

    private static bool IsClear(List<List<PointMm>> rings, Move move)
    {
        List<PointMm> ring = rings[move.Ring];
        int n = ring.Count;
        PointMm b = ring[move.At], c = ring[(move.At + 1) % n];
        return move.DrawsOut
            ? IsClear(rings, b, move.Meeting, c)
            : IsClear(rings, ring[(move.At + n - 1) % n], b, c);
    }

    /// <summary>Whether no other side comes into the triangle that is added.</summary>
    private static bool IsClear(List<List<PointMm>> rings, PointMm a, PointMm b, PointMm c)
    {
        if (Rings.Turn(a, b, c) == 0)
            return true;
        foreach (List<PointMm> ring in rings)
        {
            for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
            {
                PointMm p = ring[i];
                if (p == a || p == b || p == c)
                    continue;
                if (InTriangle(a, b, c, p) || Cross(ring[j], p, a, b) || Cross(ring[j], p, b, c) || Cross(ring[j], p, a, c))
                    return false;
            }
        }

        return true;
    }

    private static bool InTriangle(PointMm a, PointMm b, PointMm c, PointMm p)
    {
        double one = Rings.Turn(a, b, p), two = Rings.Turn(b, c, p), three = Rings.Turn(c, a, p);
        return (one >= 0 && two >= 0 && three >= 0) || (one <= 0 && two <= 0 && three <= 0);
    }

    private static bool Cross(PointMm a, PointMm b, PointMm c, PointMm d) =>
        Rings.Turn(a, b, c) * Rings.Turn(a, b, d) < 0 && Rings.Turn(c, d, a) * Rings.Turn(c, d, b) < 0;
}
