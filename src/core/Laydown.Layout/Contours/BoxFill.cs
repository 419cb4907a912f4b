using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Places the upright rectangles around pieces in columns from the left, bottom up: a first answer that needs no search.</summary>
internal static class BoxFill
{
    /// <summary>Whether all boards are upright rectangles without keep-outs; a strip always is.</summary>
    internal static bool Takes(ContourProblem problem) => problem.Stocks.All(s => s.KeepOuts is null or [] && BoardKind.IsRectangle(s.Area));

    internal static ContourResult Fill(ContourProblem problem)
    {
        List<(ContourPiece Piece, int Copy)> open =
            [.. problem.Pieces.SelectMany(p => Enumerable.Range(1, p.Copies).Select(c => (p, c))).OrderByDescending(c => Box(c.p).WidthMm)];
        List<ContourSheet> sheets = [];
        double cost = 0, area = 0, length = 0;
        IEnumerable<(string? Id, RectMm Room, double Cost)> rooms = problem.Strip is { } strip
            ? [((string?)null, new RectMm(strip.EdgeMarginMm, strip.EdgeMarginMm, 1e12, strip.WidthMm - (2 * strip.EdgeMarginMm)), 0.0)]
            : problem.Stocks.SelectMany(s => Enumerable.Repeat(((string?)s.Id, Inside(s), s.Cost), s.Copies ?? open.Count));
        foreach ((string? id, RectMm room, double price) in rooms)
        {
            List<ContourSpot> spots = FillOne(open, room, problem.GapMm, ref length);
            if (spots.Count == 0)
                continue;
            sheets.Add(new(id, spots));
            cost += price;
            area += room.WidthMm * room.HeightMm;
        }

        double placed = problem.Pieces.Sum(p => p.Copies * p.Area.AreaMm2) - open.Sum(o => o.Piece.Area.AreaMm2);
        double used = problem.Strip is null ? area : problem.Strip.WidthMm * length;
        return new(sheets, length, cost, used > 0 ? placed / used : 0, Left(open));
    }

    private static List<ContourSpot> FillOne(List<(ContourPiece Piece, int Copy)> open, RectMm room, double gap, ref double length)
    {
        List<ContourSpot> spots = [];
        double x = room.XMm, y = room.YMm, column = 0;
        for (int i = 0; i < open.Count;)
        {
            RectMm box = Box(open[i].Piece);
            if (y + box.HeightMm > room.TopMm && y > room.YMm)
                (x, y, column) = (x + column + gap, room.YMm, 0);
            if (y + box.HeightMm > room.TopMm || x + box.WidthMm > room.RightMm)
            {
                i++;
                continue;
            }

            spots.Add(new(open[i].Piece.Id, open[i].Copy, x - box.XMm, y - box.YMm, open[i].Piece.Angles.Degrees[0]));
            column = Math.Max(column, box.WidthMm);
            length = Math.Max(length, x + box.WidthMm + room.XMm);
            y += box.HeightMm + gap;
            open.RemoveAt(i);
        }

        return spots;
    }

    private static RectMm Inside(ContourStock stock)
    {
        RectMm box = stock.Area.Bounds;
        double margin = stock.EdgeMarginMm;
        return new(box.XMm + margin, box.YMm + margin, box.WidthMm - (2 * margin), box.HeightMm - (2 * margin));
    }

    private static RectMm Box(ContourPiece piece)
    {
        (double sin, double cos) = Math.SinCos(piece.Angles.Degrees[0] * Math.PI / 180);
        PointMm[] turned = [.. piece.Area.OuterRings().SelectMany(r => r.Points).Select(p => new PointMm((cos * p.XMm) - (sin * p.YMm), (sin * p.XMm) + (cos * p.YMm)))];
        double left = turned.Min(p => p.XMm), bottom = turned.Min(p => p.YMm);
        return new(left, bottom, turned.Max(p => p.XMm) - left, turned.Max(p => p.YMm) - bottom);
    }

    private static IReadOnlyList<UnplacedPiece> Left(List<(ContourPiece Piece, int Copy)> open) =>
    [
        .. open.GroupBy(o => o.Piece).Select(g => new UnplacedPiece(
            g.Key.Id, g.Count(), Invariant($"{g.Key.Area.Bounds.WidthMm:0.##} × {g.Key.Area.Bounds.HeightMm:0.##} mm"), ContourJob.WantedRoom)),
    ];
}
