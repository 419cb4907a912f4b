using Laydown.Measures;

namespace Laydown.Plan.Drawings;

/// <summary>Where the millimetres of a sheet lie in its drawing.</summary>
/// <param name="Sheet">The sheet, mm.</param>
/// <param name="Turned">Whether it is drawn lying: a quarter turn clockwise, its upper edge to the right.</param>
/// <param name="LeftPx">Left edge of the drawn sheet.</param>
/// <param name="TopPx">Upper edge of the drawn sheet.</param>
/// <param name="PxPerMm">Scale.</param>
internal sealed record SheetView(SizeMm Sheet, bool Turned, double LeftPx, double TopPx, double PxPerMm)
{
    internal double WidthPx => (Turned ? Sheet.HeightMm : Sheet.WidthMm) * PxPerMm;

    internal double HeightPx => (Turned ? Sheet.WidthMm : Sheet.HeightMm) * PxPerMm;

    /// <summary>Where the sheet's lower left corner lies.</summary>
    internal (double X, double Y) Origin => Turned ? (LeftPx, TopPx) : (LeftPx, TopPx + HeightPx);

    internal static SheetView Of(SizeMm sheet, double left, double top, double mostWide, double mostHigh)
    {
        bool turned = sheet.HeightMm > 1.3 * sheet.WidthMm;
        (double w, double h) = turned ? (sheet.HeightMm, sheet.WidthMm) : (sheet.WidthMm, sheet.HeightMm);
        return new(sheet, turned, left, top, Math.Min(mostWide / Math.Max(w, 1e-6), mostHigh / Math.Max(h, 1e-6)));
    }

    /// <summary>A rectangle of the sheet in the drawing.</summary>
    internal (double X, double Y, double W, double H) Of(RectMm r) => Turned
        ? (LeftPx + (r.YMm * PxPerMm), TopPx + (r.XMm * PxPerMm), r.HeightMm * PxPerMm, r.WidthMm * PxPerMm)
        : (LeftPx + (r.XMm * PxPerMm), TopPx + ((Sheet.HeightMm - r.TopMm) * PxPerMm), r.WidthMm * PxPerMm, r.HeightMm * PxPerMm);

    /// <summary>A ring of the sheet as path data of the drawing.</summary>
    internal string Ring(IReadOnlyList<PointMm> ring) => string.Concat(ring.Select((p, i) =>
    {
        (double x, double y, _, _) = Of(new RectMm(p.XMm, p.YMm, 0, 0));
        return Invariant($"{(i == 0 ? 'M' : 'L')}{x:0.##} {y:0.##}");
    })) + "Z";

    /// <summary>The widest level line within rings, of a few that are looked at, as a rectangle without height.</summary>
    internal static RectMm Widest(IReadOnlyList<IReadOnlyList<PointMm>> rings)
    {
        const int Looks = 15;
        double low = rings[0].Min(p => p.YMm), high = rings[0].Max(p => p.YMm);
        RectMm widest = default;
        for (int look = 1; look <= Looks; look++)
        {
            double y = low + ((high - low) * look / (Looks + 1));
            double[] crossings = [.. rings.SelectMany(r => r.Select((p, i) => (From: p, To: r[(i + 1) % r.Count])))
                .Where(s => (s.From.YMm <= y) != (s.To.YMm <= y))
                .Select(s => s.From.XMm + ((s.To.XMm - s.From.XMm) * (y - s.From.YMm) / (s.To.YMm - s.From.YMm))).Order()];
            for (int i = 0; i + 1 < crossings.Length; i += 2)
                if (crossings[i + 1] - crossings[i] > widest.WidthMm)
                    widest = new(crossings[i], y, crossings[i + 1] - crossings[i], 0);
        }

        return widest;
    }

    /// <summary>Which way a piece's upper edge points in the drawing; pieces turn counter-clockwise.</summary>
    /// <param name="quarterTurns">How often the piece is turned by 90°.</param>
    internal (int X, int Y) UpOf(int quarterTurns) => ((quarterTurns + (Turned ? 3 : 0)) % 4) switch
    {
        0 => (0, -1),
        1 => (-1, 0),
        2 => (0, 1),
        _ => (1, 0),
    };
}
