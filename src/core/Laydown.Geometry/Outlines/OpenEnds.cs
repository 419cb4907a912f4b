using Laydown.Measures;

namespace Laydown.Geometry.Outlines;

/// <summary>Joins open lines end to end to closed ones.</summary>
internal static class OpenEnds
{
    /// <summary>Closed lines as they came, and open ones chained; what stays open is refused by name.</summary>
    internal static IReadOnlyList<RawContour> Join(IReadOnlyList<RawContour> contours, double joinMm, OutlineNotes notes)
    {
        List<RawContour> open = [.. contours.Where(c => !IsClosed(c))];
        List<RawContour> closed = [.. contours.Where(IsClosed)];
        EndGrid ends = new(open, Math.Max(joinMm, 1e-6));
        for (int i = 0; i < open.Count; i++)
        {
            if (!ends.Take(i))
                continue;
            List<PointMm> chain = [.. open[i].Points];
            int joined = 1;
            joined += Grow(chain, ends, open);
            chain.Reverse();
            joined += Grow(chain, ends, open);
            Close(open[i].Field, chain, joined, joinMm, closed, notes);
        }

        return closed;
    }

    private static bool IsClosed(RawContour contour) =>
        contour.Closed || (contour.Points.Count > 3 && Apart(contour.Points[0], contour.Points[^1]) <= 1e-6);

    // Takes lines on from the end of the chain until none begins there.
    private static int Grow(List<PointMm> chain, EndGrid ends, List<RawContour> open)
    {
        int joined = 0;
        while (ends.TakeAt(chain[^1]) is { } next)
        {
            IReadOnlyList<PointMm> points = open[next.Line].Points;
            IEnumerable<PointMm> way = next.AtStart ? points : points.Reverse();
            chain.AddRange(way.Skip(Apart(chain[^1], next.AtStart ? points[0] : points[^1]) <= 1e-6 ? 1 : 0));
            joined++;
        }

        return joined;
    }

    private static void Close(string field, List<PointMm> chain, int joined, double joinMm, List<RawContour> closed, OutlineNotes notes)
    {
        double gap = Apart(chain[0], chain[^1]);
        if (chain.Count < 3 || gap > joinMm)
        {
            notes.Refuse(
                field, Invariant($"an open line, its ends {gap:0.###} mm apart at {chain[^1].XMm:0.##}, {chain[^1].YMm:0.##} mm"),
                Invariant($"a closed one, to {joinMm:0.###} mm"));
            return;
        }

        if (joined > 1 || gap > 1e-6)
        {
            notes.Mended(
                "outline-open", gap > 1e-6 ? Severity.Warn : Severity.Note, chain[0], Invariant($"{field}: open lines were joined to a ring."),
                Invariant($"{joined} lines, last gap {gap:0.####} mm"), Invariant($"closed, to {joinMm:0.###} mm"), "ends joined");
        }

        closed.Add(new(field, chain, true));
    }

    private static double Apart(PointMm one, PointMm other) => Math.Sqrt(Math.Pow(one.XMm - other.XMm, 2) + Math.Pow(one.YMm - other.YMm, 2));

    // Ends of open lines in square cells as wide as the reach, so that only nine cells are looked at.
    private sealed class EndGrid
    {
        private readonly IReadOnlyList<RawContour> lines;
        private readonly double reach;
        private readonly bool[] taken;
        private readonly Dictionary<(long X, long Y), List<(int Line, bool AtStart)>> cells = [];

        internal EndGrid(IReadOnlyList<RawContour> lines, double reach)
        {
            (this.lines, this.reach, taken) = (lines, reach, new bool[lines.Count]);
            for (int i = 0; i < lines.Count; i++)
            {
                taken[i] = lines[i].Points.Count == 0;
                if (taken[i])
                    continue;
                Put(i, true);
                Put(i, false);
            }
        }

        internal bool Take(int line) => !taken[line] && (taken[line] = true);

        internal (int Line, bool AtStart)? TakeAt(PointMm place)
        {
            (long x, long y) = Cell(place);
            (int Line, bool AtStart)? best = null;
            double nearest = reach;
            for (long i = x - 1; i <= x + 1; i++)
            {
                for (long j = y - 1; j <= y + 1; j++)
                {
                    foreach ((int Line, bool AtStart) end in cells.GetValueOrDefault((i, j)) ?? [])
                    {
                        double apart = taken[end.Line] ? double.MaxValue : Apart(End(end), place);
                        if (apart < nearest || (apart == nearest && (best is null || end.Line < best.Value.Line)))
                            (best, nearest) = (end, apart);
                    }
                }
            }

            if (best is { } found)
                taken[found.Line] = true;
            return best;
        }

        private void Put(int line, bool atStart)
        {
            (long, long) cell = Cell(End((line, atStart)));
            if (!cells.TryGetValue(cell, out List<(int, bool)>? there))
                cells[cell] = there = [];
            there.Add((line, atStart));
        }

        private PointMm End((int Line, bool AtStart) end) => end.AtStart ? lines[end.Line].Points[0] : lines[end.Line].Points[^1];

        private (long, long) Cell(PointMm p) => ((long)Math.Floor(p.XMm / reach), (long)Math.Floor(p.YMm / reach));
    }
}
