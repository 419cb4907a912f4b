using Laydown.Layout.Judging;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Lays a piece that was let go near others exactly at the gap from their contours, or at the margin of the sheet.</summary>
internal static class ContourSnap
{
    private const int MostSteps = 16;

    /// <summary>The spot shifted by at most <paramref name="reachMm"/> to where it touches what it must keep clear of; as it is where no such place is clear.</summary>
    internal static HandSpot Of(HandSheet sheet, int without, HandSpot spot, double reachMm, HandRules rules)
    {
        if (reachMm <= 0)
            return spot;
        RectMm here = rules.LyingOf(spot).Box, near = here.Grown((2 * reachMm) + rules.GapMm);
        LyingPiece[] others = [.. sheet.Spots.Where((_, i) => i != without).Select(rules.LyingOf).Where(p => p.Box.Overlaps(near))];

        // At an edge in reach first, then away from the nearest contours, or up to the nearest.
        foreach ((double x, double y) in Edges(here, reachMm, rules.Printable))
        {
            HandSpot settled = Settled(Moved(spot, x, y), others, reachMm, rules);
            bool inReach = Math.Abs(settled.XMm - spot.XMm) <= reachMm && Math.Abs(settled.YMm - spot.YMm) <= reachMm;
            if (inReach && !SheetJudge.Flaws([rules.LyingOf(settled), .. others], rules.Room).Any(f => f.Pieces[0] == 0))
                return settled;
        }

        return spot;
    }

    private static IEnumerable<(double X, double Y)> Edges(RectMm here, double reach, RectMm printable)
    {
        double[] xs = [.. new[] { printable.XMm - here.XMm, printable.RightMm - here.RightMm }.Where(d => Math.Abs(d) <= reach).OrderBy(Math.Abs).Take(1), 0];
        double[] ys = [.. new[] { printable.YMm - here.YMm, printable.TopMm - here.TopMm }.Where(d => Math.Abs(d) <= reach).OrderBy(Math.Abs).Take(1), 0];
        return xs.SelectMany(x => ys.Select(y => (x, y)));
    }

    private static HandSpot Settled(HandSpot spot, LyingPiece[] others, double reachMm, HandRules rules)
    {
        HandSpot now = spot;
        for (int step = 0; step < MostSteps && others.Length > 0; step++)
        {
            LyingPiece lying = rules.LyingOf(now);
            (PairDistance pair, LyingPiece other) = others.Select(o => (PairDistance.Of(lying, o, alongAxes: false), o)).MinBy(p => p.Item1.ApartMm);
            double wanted = rules.GapMm - pair.ApartMm;

            // Pulled up only once, to begin with; after that it only gives way.
            if (Math.Abs(wanted) < 0.0005 || (wanted < 0 && (step > 0 || -wanted > reachMm)))
                break;
            (double x, double y) = Away(lying, other, pair);
            now = Moved(now, x * wanted, y * wanted);
        }

        return now with { XMm = Math.Round(now.XMm, 3), YMm = Math.Round(now.YMm, 3) };
    }

    // From the nearest point of the other to the nearest of this; where they share area, out over the middle of what they share.
    private static (double X, double Y) Away(LyingPiece lying, LyingPiece other, PairDistance pair)
    {
        double x, y;
        if (pair.ApartMm > 1e-9)
        {
            (PointMm here, PointMm there) = lying.Shape.Nearest(other.Shape);
            (x, y) = (here.XMm - there.XMm, here.YMm - there.YMm);
        }
        else
        {
            (x, y) = (Middle(lying.Box).X - Middle(pair.Where).X, Middle(lying.Box).Y - Middle(pair.Where).Y);
        }

        double length = Math.Sqrt((x * x) + (y * y));
        return length > 0 ? (x / length, y / length) : (0, 1);
    }

    private static (double X, double Y) Middle(RectMm r) => (r.XMm + (r.WidthMm / 2), r.YMm + (r.HeightMm / 2));

    private static HandSpot Moved(HandSpot spot, double x, double y) => spot with { XMm = spot.XMm + x, YMm = spot.YMm + y };
}
