namespace Laydown.Layout.Contours;

/// <summary>A piece at one of its angles in whole numbers, counter-clockwise, cut into triangles for the test of overlap.</summary>
internal sealed class Tile
{
    internal Tile(int piece, int angle, IReadOnlyList<TilePoint> corners)
    {
        (Piece, Angle, Corners) = (piece, angle, [.. corners]);
        TilePoint[] left = [.. corners];
        List<TilePoint[]> triangles = [];
        while (left.Length > 3)
        {
            int ear = Enumerable.Range(0, left.Length).First(i => IsEar(left, i));
            triangles.Add([left[(ear + left.Length - 1) % left.Length], left[ear], left[(ear + 1) % left.Length]]);
            left = [.. left.Where((_, i) => i != ear)];
        }

        triangles.Add(left);
        Triangles = [.. triangles.Where(t => TilePoint.Cross(t[1] - t[0], t[2] - t[0]) != 0)];
        (MinX, MinY, MaxX, MaxY) = (corners.Min(p => p.X), corners.Min(p => p.Y), corners.Max(p => p.X), corners.Max(p => p.Y));
    }

    internal int Piece { get; }

    internal int Angle { get; }

    internal TilePoint[] Corners { get; }

    internal TilePoint[][] Triangles { get; }

    internal long MinX { get; }

    internal long MinY { get; }

    internal long MaxX { get; }

    internal long MaxY { get; }

    /// <summary>Twice the area.</summary>
    internal long DoubleArea => Triangles.Sum(t => TilePoint.Cross(t[1] - t[0], t[2] - t[0]));

    /// <summary>Whether the insides of this tile at one place and of another at another share anything.</summary>
    internal bool Overlaps(TilePoint at, Tile other, TilePoint place)
    {
        TilePoint shift = at - place;
        if (MinX + shift.X >= other.MaxX || other.MinX >= MaxX + shift.X || MinY + shift.Y >= other.MaxY || other.MinY >= MaxY + shift.Y)
            return false;
        foreach (TilePoint[] a in Triangles)
        {
            foreach (TilePoint[] b in other.Triangles)
            {
                if (!Parts(a, b, shift) && !Parts(b, a, new(-shift.X, -shift.Y)))
                    return true;
            }
        }

        return false;
    }

    /// <summary>Whether a side of the first triangle, shifted, has the whole second on its right.</summary>
    private static bool Parts(TilePoint[] a, TilePoint[] b, TilePoint shift)
    {
        for (int i = 0; i < 3; i++)
        {
            TilePoint from = a[i] + shift, way = a[(i + 1) % 3] - a[i];
            if (TilePoint.Cross(way, b[0] - from) <= 0 && TilePoint.Cross(way, b[1] - from) <= 0 && TilePoint.Cross(way, b[2] - from) <= 0)
                return true;
        }

        return false;
    }

    private static bool IsEar(TilePoint[] ring, int i)
    {
        TilePoint a = ring[(i + ring.Length - 1) % ring.Length], b = ring[i], c = ring[(i + 1) % ring.Length];
        long turn = TilePoint.Cross(b - a, c - b);
        if (turn < 0)
            return false;
        return turn == 0 || !ring.Any(p => p != a && p != b && p != c
            && TilePoint.Cross(b - a, p - a) >= 0 && TilePoint.Cross(c - b, p - b) >= 0 && TilePoint.Cross(a - c, p - c) >= 0);
    }
}
