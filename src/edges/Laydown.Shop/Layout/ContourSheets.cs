using Laydown.Geometry.Shapes;
using Laydown.Layout.Contours;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Machines;

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
            result = Ended(problem, result, MostOver(lying), offcutLeastSideMm);
        return new(
            Numbered([.. SameSheets.Merged(result.Sheets).Select(s => Written(s.Sheet.Spots, s.Repeats, lying, sheet, marginMm, offcutLeastSideMm))]), result.Unplaced);
    }

    // The last board is pushed together, filled with what may be made more, and what lies on it now pushed together again.
    private static ContourResult Ended(ContourProblem problem, ContourResult result, Dictionary<string, int> mostOver, double leastSideMm)
    {
        ContourResult pushed = LastBoard.Pushed(problem, result, leastSideMm, Rules), filled = ContourOvers.Filled(problem, pushed, mostOver);
        return filled == pushed ? pushed : LastBoard.Pushed(problem, filled, leastSideMm, Rules);
    }

    /// <summary>Pieces on one length of roll, or on two side by side that advance together, as short as a short search finds; y runs along the roll, bare ends contained.</summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="contours">Contour of a piece by its id, mm of its printed picture; a piece without one takes its rectangle.</param>
    /// <param name="rolls">Id, width and length left of each roll, mm.</param>
    /// <param name="marginMm">What contours keep from the sides, mm.</param>
    /// <param name="web">Bare lead and bounds of sections.</param>
    /// <param name="iterations">How long is searched; 0 for a quick look.</param>
    /// <param name="cancellation">Ends the work.</param>
    /// <returns>A sheet for each roll that something lies on; of two rolls each names its own.</returns>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    internal LayoutResult OnRolls(
        IReadOnlyList<Piece> pieces, IReadOnlyDictionary<string, Shape> contours, IReadOnlyList<(string StockId, SizeMm Size)> rolls, double marginMm, RollWeb web,
        long iterations, CancellationToken cancellation)
    {
        Dictionary<string, (Piece Piece, Shape Area)> lying = Lying(pieces, contours);
        ContourPiece[] wanted = [.. Wanted(lying).Select(AlongStrip)];
        ContourStrip[] strips = [.. rolls.Select(r => new ContourStrip(r.Size.WidthMm, marginMm))];
        SearchRules rules = Rules with { Iterations = Math.Min(iterations, Rules.Iterations) };
        ContourRollPlan plan = ContourRolls.Solve(wanted, strips, gapMm, new(web.LeastSectionMm, web.LongestSectionMm), null, rules, cancellation);
        cancellation.ThrowIfCancellationRequested();
        double room = rolls.Min(r => r.Size.HeightMm), advance = AdvanceMm(plan, marginMm, web.LeadMm);
        if (iterations > 0 && advance <= room)
            plan = ContourRolls.Filled(plan, wanted, strips, gapMm, null, MostOver(lying));

        // The strip of the search runs along x, a roll along y: all is turned by a quarter and moved behind the lead-in.
        double TopOf(ContourSpot s) => Outlined(s.PieceId, lying[s.PieceId].Area).On(Put(s, lying[s.PieceId].Piece))[0].Max(p => p.YMm);
        ContourSpot[][] spots = [.. plan.Rolls.Select((r, i) => r.Spots.Select(s => Turned(s, rolls[i].Size.WidthMm, web.LeadMm - marginMm)).ToArray())];
        ContourSpot[][] kept = [.. spots.Select(r => r.Where(s => TopOf(s) + web.LeadMm <= room + 1e-6).ToArray())];
        UnplacedPiece[] tooLong = [.. spots.SelectMany((r, i) => r.Except(kept[i])).GroupBy(s => s.PieceId, StringComparer.Ordinal).Select(g => new UnplacedPiece(
            g.Key, g.Count(), "no length left on the roll", Invariant($"a longer roll than {room / 1000:0.##} m")))];
        if (tooLong.Length > 0)
            advance = kept.SelectMany(r => r).Select(TopOf).DefaultIfEmpty(0).Max() + web.LeadMm;
        SheetLayout[] sheets = [.. rolls.Select((r, i) => (r, i)).Where(r => kept[r.i].Length > 0).Select(r =>
            Written(kept[r.i], 1, lying, new(r.r.Size.WidthMm, advance), marginMm, double.MaxValue) with
            {
                StockId = rolls.Count > 1 ? r.r.StockId : null,
                CutsAcrossMm = plan.Rolls[r.i].CutsMm.Count == 0 ? null : [.. plan.Rolls[r.i].CutsMm.Select(c => c - marginMm + web.LeadMm).Where(c => c < advance - web.LeadMm)],
            })];
        return new(Numbered(sheets), [.. plan.Unplaced, .. tooLong]);
    }

    private static double AdvanceMm(ContourRollPlan plan, double marginMm, double leadMm) => plan.Rolls.Max(r => r.LengthMm) - (2 * marginMm) + (2 * leadMm);

    private static ContourSpot Turned(ContourSpot spot, double widthMm, double upMm) =>
        spot with { XMm = widthMm - spot.YMm, YMm = spot.XMm + upMm, AngleDegrees = (spot.AngleDegrees + 90) % 360 };

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
