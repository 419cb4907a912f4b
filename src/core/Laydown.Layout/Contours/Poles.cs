using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Circles inside a shape that touch but do not overlap, largest first: what stands for the shape where overlap is weighed.</summary>
/// <remarks>
/// Each next circle is the largest that fits between the sides and the circles before it; a grid finds the start, smaller and smaller
/// steps the place. Ends at 64 circles, at 16 that cover 80 % of the area, or at 8 that cover 90 %. [Gardeyn2025]
/// </remarks>
internal static class Poles
{
    private const int Cells = 48;

    internal static List<Pole> Of(List<List<PointMm>> rings, double area)
    {
        (double left, double bottom, double right, double top) = Box(rings);
        List<(double X, double Y)> places = [];
        List<double> room = [];
        for (int cell = 0; cell < Cells * Cells; cell++)
        {
            double x = left + ((right - left) * ((cell % Cells) + 0.5) / Cells), y = bottom + ((top - bottom) * ((cell / Cells) + 0.5) / Cells);
            if (!Rings.Holds(rings, x, y))
                continue;
            places.Add((x, y));
            room.Add(Rings.Distance(rings, x, y));
        }

        return Grow(rings, places, room, area, Math.Max(right - left, top - bottom) / Cells);
    }

    private static List<Pole> Grow(List<List<PointMm>> rings, List<(double X, double Y)> places, List<double> room, double area, double step)
    {
        List<Pole> poles = [];
        double covered = 0;
        while (places.Count > 0 && poles.Count < 64 && !(poles.Count >= 16 && covered > 0.8) && !(poles.Count >= 8 && covered > 0.9))
        {
            int most = 0;
            for (int i = 1; i < room.Count; i++)
                most = room[i] > room[most] ? i : most;
            if (!(room[most] > 0))
                break;
            Pole pole = Refined(rings, poles, places[most], step);
            if (!(pole.Radius > 0) || (poles.Count > 0 && pole.Radius < poles[0].Radius * 0.02))
                break;

            poles.Add(pole);
            covered += Math.PI * pole.Radius * pole.Radius / area;
            for (int i = 0; i < room.Count; i++)
                room[i] = Math.Min(room[i], Math.Sqrt(Square(places[i].X - pole.X) + Square(places[i].Y - pole.Y)) - pole.Radius);
        }

        return poles.Count > 0 ? poles : [Sliver(rings)];
    }

    private static Pole Refined(List<List<PointMm>> rings, List<Pole> poles, (double X, double Y) start, double step)
    {
        Pole best = new(start.X, start.Y, Room(rings, poles, start.X, start.Y));
        for (double by = step; by > step / 500; by /= 2)
        {
            for (bool better = true; better;)
            {
                better = false;
                foreach ((double dx, double dy) in (ReadOnlySpan<(double, double)>)[(1, 0), (-1, 0), (0, 1), (0, -1), (0.7, 0.7), (-0.7, 0.7), (0.7, -0.7), (-0.7, -0.7)])
                {
                    Pole next = new(best.X + (dx * by), best.Y + (dy * by), Room(rings, poles, best.X + (dx * by), best.Y + (dy * by)));
                    if (next.Radius > best.Radius * 1.0001)
                        (best, better) = (next, true);
                }
            }
        }

        return best;
    }

    private static double Room(List<List<PointMm>> rings, List<Pole> poles, double x, double y)
    {
        if (!Rings.Holds(rings, x, y))
            return 0;
        double room = Rings.Distance(rings, x, y);
        foreach (Pole pole in poles)
            room = Math.Min(room, Math.Sqrt(Square(x - pole.X) + Square(y - pole.Y)) - pole.Radius);
        return Math.Max(0, room);
    }

    /// <summary>A shape so thin that no grid place lies in it: a speck on its longest side's middle stands for it.</summary>
    private static Pole Sliver(List<List<PointMm>> rings)
    {
        List<PointMm> ring = rings[0];
        PointMm a = ring[0], b = ring[1];
        return new((a.XMm + b.XMm) / 2, (a.YMm + b.YMm) / 2, 0);
    }

    private static (double Left, double Bottom, double Right, double Top) Box(List<List<PointMm>> rings) => (
        rings.Min(r => r.Min(p => p.XMm)), rings.Min(r => r.Min(p => p.YMm)), rings.Max(r => r.Max(p => p.XMm)), rings.Max(r => r.Max(p => p.YMm)));

    private static double Square(double value) => value * value;
}
