using Laydown.Geometry.Shapes;
using Laydown.Layout.Contours;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>Lays pieces out by the contours they are cut to, at quarter turns, and writes the result as sheets with printed rectangles.</summary>
/// <param name="gapMm">Least distance between two contours, mm.</param>
/// <param name="mirrored">Whether the pieces are printed mirrored on the face that is seen.</param>
internal sealed class ContourSheets(double gapMm, bool mirrored)
{
    // Planning a day is not to wait long for one run: more can be asked for on the page of the layout.
    private static readonly SearchRules Rules = new(Seed: 1, Iterations: 1500, Workers: 1);

    /// <summary>Pieces on boards of one size.</summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="contours">Contour of a piece by its id, mm of its printed picture; a piece without one takes its rectangle.</param>
    /// <param name="sheet">Size of a board, mm.</param>
    /// <param name="marginMm">What contours keep from its edges, mm.</param>
    /// <param name="offcutLeastSideMm">Shorter side a rest must have to be kept, mm.</param>
    /// <param name="quick">Whether only the boards are counted: as it comes, with nothing searched. The searched layout takes no more.</param>
    /// <param name="cancellation">Ends the work.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    internal LayoutResult OnBoards(
        IReadOnlyList<Piece> pieces, IReadOnlyDictionary<string, Shape> contours, SizeMm sheet, double marginMm, double offcutLeastSideMm, bool quick,
        CancellationToken cancellation)
    {
        Dictionary<string, (Piece Piece, Shape Area)> lying = Lying(pieces, contours);
        ContourStock stock = new("board", Shape.Of(new RectMm(0, 0, sheet.WidthMm, sheet.HeightMm)), null, 1, marginMm);
        ContourProblem problem = ContourProblem.On([stock], gapMm, Wanted(lying));
        ContourResult result = ContourLayout.Solve(problem, quick ? Rules with { Iterations = 0 } : Rules, null, cancellation);
        cancellation.ThrowIfCancellationRequested();
        if (!quick)
            result = ContourOvers.Filled(problem, LastBoard.Pushed(problem, result, offcutLeastSideMm, Rules), MostOver(lying));
        return new(
            Numbered([.. SameSheets.Merged(result.Sheets).Select(s => Written(s.Sheet.Spots, s.Repeats, lying, sheet, marginMm, offcutLeastSideMm))]), result.Unplaced);
    }

    /// <summary>Pieces on one length of roll, as short as a short search finds; y runs along the roll, bare ends contained.</summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="contours">Contour of a piece by its id, mm of its printed picture; a piece without one takes its rectangle.</param>
    /// <param name="roll">Width and length left of the roll, mm.</param>
    /// <param name="marginMm">What contours keep from the sides, mm.</param>
    /// <param name="leadMm">Bare roll before and after the pieces, mm.</param>
    /// <param name="iterations">How long is searched; 0 for a quick look.</param>
    /// <param name="cancellation">Ends the work.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    internal LayoutResult OnRoll(
        IReadOnlyList<Piece> pieces, IReadOnlyDictionary<string, Shape> contours, SizeMm roll, double marginMm, double leadMm, long iterations,
        CancellationToken cancellation)
    {
        Dictionary<string, (Piece Piece, Shape Area)> lying = Lying(pieces, contours);
        ContourProblem strip = ContourProblem.On(new ContourStrip(roll.WidthMm, marginMm), gapMm, [.. Wanted(lying).Select(AlongStrip)]);
        ContourResult result = ContourLayout.Solve(strip, Rules with { Iterations = Math.Min(iterations, Rules.Iterations) }, null, cancellation);
        cancellation.ThrowIfCancellationRequested();
        if (iterations > 0 && result.LengthMm - (2 * marginMm) + (2 * leadMm) <= roll.HeightMm)
            result = ContourOvers.Filled(strip, result, MostOver(lying));

        // The strip of the search runs along x, a roll along y: all is turned by a quarter and moved behind the lead-in.
        ContourSpot[] spots = [.. result.Sheets.SelectMany(s => s.Spots).Select(s => s with
        {
            XMm = roll.WidthMm - s.YMm,
            YMm = s.XMm - marginMm + leadMm,
            AngleDegrees = (s.AngleDegrees + 90) % 360,
        })];
        double TopOf(ContourSpot s) => Outlined(s.PieceId, lying[s.PieceId].Area).On(Put(s, lying[s.PieceId].Piece))[0].Max(p => p.YMm);
        ContourSpot[] kept = [.. spots.Where(s => TopOf(s) + leadMm <= roll.HeightMm + 1e-6)];
        UnplacedPiece[] tooLong = [.. spots.Except(kept).GroupBy(s => s.PieceId, StringComparer.Ordinal).Select(g => new UnplacedPiece(
            g.Key, g.Count(), "no length left on the roll", Invariant($"a longer roll than {roll.HeightMm / 1000:0.##} m")))];
        IReadOnlyList<SheetLayout> sheets = kept.Length == 0
            ? []
            : [Written(kept, 1, lying, new(roll.WidthMm, kept.Max(TopOf) + leadMm), marginMm, double.MaxValue)];
        return new(Numbered(sheets), [.. result.Unplaced, .. tooLong]);
    }

    private static Dictionary<string, int> MostOver(Dictionary<string, (Piece Piece, Shape Area)> lying) =>
        lying.ToDictionary(p => p.Key, p => p.Value.Piece.MostOver, StringComparer.Ordinal);

    private static ContourPiece AlongStrip(ContourPiece piece) =>
        piece.Angles.Equals(ContourAngles.HalfTurns) ? piece with { Angles = ContourAngles.Of([90, 270]) } : piece;

    private Dictionary<string, (Piece Piece, Shape Area)> Lying(IReadOnlyList<Piece> pieces, IReadOnlyDictionary<string, Shape> contours) =>
        pieces.ToDictionary(p => p.Id, p => (p, contours.TryGetValue(p.Id, out Shape? area)
            ? mirrored ? Mirrored(area, p.Printed.WidthMm) : area
            : Shape.Of(new RectMm(0, 0, p.Printed.WidthMm, p.Printed.HeightMm))), StringComparer.Ordinal);

    // Turned on its head a piece still lies along flutes and grain.
    private static IReadOnlyList<ContourPiece> Wanted(Dictionary<string, (Piece Piece, Shape Area)> lying) =>
        [.. lying.Values.Select(p => new ContourPiece(
            p.Piece.Id, p.Area, p.Piece.Quantity, p.Piece.MayTurn ? ContourAngles.QuarterTurns : ContourAngles.HalfTurns))];

    private static Shape Mirrored(Shape area, double widthMm)
    {
        Outline Other(Outline ring) => Outline.Of([.. ring.Points.Select(p => new PointMm(widthMm - p.XMm, p.YMm))], closed: true);
        return Shape.Of(Other(area.OuterRings()[0]), [.. area.Holes().Select(Other)]);
    }

    private static SheetLayout Written(
        IReadOnlyList<ContourSpot> spots, int repeats, Dictionary<string, (Piece Piece, Shape Area)> lying, SizeMm sheet, double marginMm, double leastSideMm)
    {
        Placement[] placements = [.. spots.Select(s => Put(s, lying[s.PieceId].Piece)).OrderBy(p => p.Place.YMm).ThenBy(p => p.Place.XMm)];
        PieceOutline[] outlines = [.. placements.Select(p => p.PieceId).Distinct(StringComparer.Ordinal).Select(id => Outlined(id, lying[id].Area))];
        return new(sheet, marginMm, placements, repeats, Offcuts(placements, outlines, sheet, leastSideMm), Outlines: outlines);
    }

    private static PieceOutline Outlined(string id, Shape area) =>
        new(id, area.OuterRings()[0].Points, [.. area.Holes().Select(h => h.Points)]);

    // A point p of the picture lies at R p + shift: the printed rectangle follows.
    private static Placement Put(ContourSpot spot, Piece piece)
    {
        (double w, double h) = (piece.Printed.WidthMm, piece.Printed.HeightMm);
        int turns = (int)Math.Round(spot.AngleDegrees / 90, MidpointRounding.AwayFromZero) % 4;
        RectMm place = turns switch
        {
            1 => new(spot.XMm - h, spot.YMm, h, w),
            2 => new(spot.XMm - w, spot.YMm - h, w, h),
            3 => new(spot.XMm, spot.YMm - w, h, w),
            _ => new(spot.XMm, spot.YMm, w, h),
        };
        return new(piece.Id, spot.Copy, place, turns is 1 or 3, piece.Part, 90 * turns);
    }

    // What lies beyond all pieces at the upper or the right-hand edge comes off with one straight cut.
    private static IReadOnlyList<RectMm> Offcuts(IReadOnlyList<Placement> placements, IReadOnlyList<PieceOutline> outlines, SizeMm sheet, double leastSideMm)
    {
        Dictionary<string, PieceOutline> byId = outlines.ToDictionary(o => o.PieceId, StringComparer.Ordinal);
        List<PointMm> corners = [.. placements.SelectMany(p => byId[p.PieceId].On(p)[0])];
        double right = corners.Max(p => p.XMm), top = corners.Max(p => p.YMm);
        RectMm[] rests = [new(right, 0, sheet.WidthMm - right, sheet.HeightMm), new(0, top, sheet.WidthMm, sheet.HeightMm - top)];
        return [.. rests.Where(r => Math.Min(r.WidthMm, r.HeightMm) >= leastSideMm).OrderByDescending(r => r.Size.AreaM2).Take(1)];
    }

    // Copies are numbered over all sheets; the repeats of a sheet use up the numbers that follow.
    private static IReadOnlyList<SheetLayout> Numbered(IReadOnlyList<SheetLayout> sheets)
    {
        Dictionary<string, int> copies = new(StringComparer.Ordinal);
        List<SheetLayout> numbered = [];
        foreach (SheetLayout sheet in sheets)
        {
            numbered.Add(sheet with { Placements = [.. sheet.Placements.Select(p => p with { Copy = copies[p.PieceId] = copies.GetValueOrDefault(p.PieceId) + 1 })] });
            foreach (Placement placement in sheet.Placements)
                copies[placement.PieceId] += sheet.Repeats - 1;
        }

        return numbered;
    }
}
