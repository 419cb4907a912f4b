using Laydown.Layout.Judging;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>Measures how far a piece lies from its neighbours and the sheet's edges.</summary>
public static class Clearances
{
    /// <summary>One clearance for each side, left, right, below, above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such spot.</exception>
    public static IReadOnlyList<Clearance> Of(HandSheet sheet, int spot, HandRules rules)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(rules);
        Bounds.Within(spot, 0, sheet.Spots.Count - 1);
        if (rules.Contours is not null)
            return ByContour(sheet, spot, rules);
        RectMm[] places = [.. sheet.Spots.Select(rules.PlaceOf)];
        RectMm here = places[spot];
        SizeMm size = HandSheets.SizeOf(sheet, rules);
        return
        [
            Nearest(PieceSide.Left, here.XMm, p => Beside(p, here) ? here.XMm - p.RightMm : null, p => p.XMm < here.XMm),
            Nearest(PieceSide.Right, size.WidthMm - here.RightMm, p => Beside(p, here) ? p.XMm - here.RightMm : null, p => p.XMm >= here.XMm),
            Nearest(PieceSide.Below, here.YMm, p => Over(p, here) ? here.YMm - p.TopMm : null, p => p.YMm < here.YMm),
            Nearest(PieceSide.Above, size.HeightMm - here.TopMm, p => Over(p, here) ? p.YMm - here.TopMm : null, p => p.YMm >= here.YMm),
        ];

        Clearance Nearest(PieceSide side, double toEdge, Func<RectMm, double?> apart, Func<RectMm, bool> thatSide)
        {
            Clearance nearest = new(side, Math.Round(toEdge, 3), null);
            for (int i = 0; i < places.Length; i++)
                if (i != spot && thatSide(places[i]) && apart(places[i]) is double mm && mm < nearest.Mm)
                    nearest = new(side, Math.Round(mm, 3), i);
            return nearest;
        }
    }

    private static IReadOnlyList<Clearance> ByContour(HandSheet sheet, int spot, HandRules rules)
    {
        LyingPiece[] lying = [.. sheet.Spots.Select(rules.LyingOf)];
        SizeMm size = HandSheets.SizeOf(sheet, rules);
        RectMm here = lying[spot].Box;
        return
        [
            Nearest(PieceSide.Left, here.XMm, p => p.XMm < here.RightMm && Beside(p, here)),
            Nearest(PieceSide.Right, size.WidthMm - here.RightMm, p => p.RightMm > here.XMm && Beside(p, here)),
            Nearest(PieceSide.Below, here.YMm, p => p.YMm < here.TopMm && Over(p, here)),
            Nearest(PieceSide.Above, size.HeightMm - here.TopMm, p => p.TopMm > here.YMm && Over(p, here)),
        ];

        Clearance Nearest(PieceSide side, double toEdge, Func<RectMm, bool> thatSide)
        {
            Clearance nearest = new(side, Math.Round(toEdge, 3), null);
            for (int i = 0; i < lying.Length; i++)
                if (i != spot && thatSide(lying[i].Box) && SlideRoom.Of(lying[spot].Shape, lying[i].Shape, side) is double mm && mm < nearest.Mm)
                    nearest = new(side, Math.Round(mm, 3), i);
            return nearest;
        }
    }

    private static bool Beside(RectMm one, RectMm other) => one.YMm < other.TopMm && other.YMm < one.TopMm;

    private static bool Over(RectMm one, RectMm other) => one.XMm < other.RightMm && other.XMm < one.RightMm;
}
