using Laydown.Geometry.Shapes;
using Laydown.Layout.Boards;
using Laydown.Layout.Lanes;
using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>Lays the items of a formed run out on its stock and lays the stock on the belt.</summary>
internal static class SheetLayouts
{
    /// <summary>Kerf of saw or knife and room for the tool between two printed rectangles, mm (common practice, no source).</summary>
    internal const double GapMm = 5;

    /// <summary>Orders of pieces tried on boards.</summary>
    private const int Tries = 200;

    /// <summary>Shorter side a rest of a board must have to be kept, mm (common practice, no source).</summary>
    private const double OffcutLeastSideMm = 150;

    /// <summary>The layouts, or why the stock does not go onto the belt. Pieces without a place come back with the layouts of the others.</summary>
    /// <param name="run">The formed run.</param>
    /// <param name="contours">Contours of items that are cut to one, by item id, mm of the printed picture.</param>
    /// <param name="cancellation">Ends the work.</param>
    /// <param name="tries">How much is tried after the plain orders; 0 for a quick look.</param>
    public static Reading<LaidOut> Of(FormedRun run, IReadOnlyDictionary<string, Shape> contours, CancellationToken cancellation, int tries = Tries)
    {
        SizeMm frame = SheetFrame(run);
        FacedSheets? faced = FacedSheets.Of(run, frame, BeltOf(run));
        LayoutResult result = run.Stock.Kind switch
        {
            StockKind.Roll => Joined(run, (items, r, c) => new RollSheets(r, contours, tries).Of(items, c), RepeatedOnRoll, cancellation),
            StockKind.Blank => BlankSheets.Of(run),
            _ when contours.Count > 0 => new ContourSheets(GapMm, run.Stack.Layers[0].Mirrored).OnBoards(
                [.. run.Items.Select(i => RunPieces.WholeOf(i.Ready.Item, run.Stock))], contours, frame, run.Press.EdgeMarginMm, OffcutLeastSideMm, quick: tries == 0, cancellation),
            _ => Joined(run, (items, r, c) => OnBoards(items, r, tries, c), (item, r) => RepeatedOnBoards(item, r, faced), cancellation, faced),
        };
        if (faced is not null)
            result = faced.Told(result, [.. run.Items.Select(i => i.Ready.Item)]);
        if (result.Sheets.Count == 0)
            return Reading.Refused<LaidOut>([.. result.Unplaced.Select(Fault)]);
        return OnBelt(run, result).Then(belt => Reading.Of(new LaidOut(result.Sheets, belt, result.Unplaced)));
    }

    /// <summary>A piece without a place, as the fault of its item.</summary>
    public static InputFault Fault(UnplacedPiece piece) =>
        new(Invariant($"item {ItemIdOf(piece.PieceId)}"), null, "layout", Invariant($"{piece.Copies} × {piece.Found}"), piece.Wanted);

    /// <summary>The item a piece belongs to: its id without the number of the panel.</summary>
    public static string ItemIdOf(string pieceId) => pieceId.Split('/')[0];

    // Items that are repeated in even steps, and those whose fronts and backs share a sheet, have sheets of their own; all others share theirs.
    private static LayoutResult Joined(
        FormedRun run, Func<IReadOnlyList<FormedItem>, FormedRun, CancellationToken, LayoutResult> shared, Func<Item, FormedRun, LayoutResult> repeated,
        CancellationToken cancellation, FacedSheets? faced = null)
    {
        Dictionary<string, UnplacedPiece> refused = run.Items.Select(i => faced is null ? FacedSheets.OneFaced(i.Ready.Item) : faced.Refused(i.Ready.Item, i.Stack)).OfType<UnplacedPiece>()
            .ToDictionary(u => u.PieceId, StringComparer.Ordinal);
        List<FormedItem> able = [.. run.Items.Where(i => !refused.ContainsKey(i.Ready.Item.Id))], others = [.. able.Where(i => !IsAlone(i.Ready.Item))];
        List<LayoutResult> results = [.. able.Where(i => IsAlone(i.Ready.Item)).Select(i => repeated(i.Ready.Item, run))];
        if (others.Count > 0)
            results.Insert(0, shared(others, run, cancellation));
        return new([.. results.SelectMany(r => r.Sheets)], [.. results.SelectMany(r => r.Unplaced), .. refused.Values]);
    }

    private static bool IsAlone(Item item) => item.Repeat is not null || item.Turn?.Way == BackWay.WorkAndTurn;

    private static LayoutResult OnBoards(IReadOnlyList<FormedItem> items, FormedRun run, int tries, CancellationToken cancellation)
    {
        double margin = MarginMm(items, run);
        SizeMm frame = SheetFrame(run), most = new(frame.WidthMm - (2 * margin), frame.HeightMm - (2 * margin));
        RunPieces pieces = RunPieces.Of(run, items, most, item => item.Panels is not null);
        BoardRules rules = new(frame, margin, GapMm, ProcessOf([.. items.Select(i => i.Ready.Item)]), Iterations: tries);
        return pieces.Printed(pieces.Pieces.Count == 0 ? new([], []) : BoardLayout.Solve(pieces.Pieces, rules, cancellation), run.Press.EdgeMarginMm);
    }

    private static LayoutResult RepeatedOnBoards(Item item, FormedRun run, FacedSheets? faced) => Repeated(item, run, (piece, margin, repeat) => faced?.FacesOf(item) switch
    {
        { OneFile: true } faces => WorkAndTurn.OnBoards(piece, SheetFrame(run), margin, repeat, faces),
        { } faces => StepAndRepeat.OnBoards(piece, SheetFrame(run), margin, repeat with { RegisterMm = faces.RegisterMm }, bothFaces: true),
        null => StepAndRepeat.OnBoards(piece, SheetFrame(run), margin, repeat, FacedSheets.TwoFaces(run.Stack)),
    });

    private static LayoutResult RepeatedOnRoll(Item item, FormedRun run) => Repeated(item, run, (piece, margin, repeat) =>
        StepAndRepeat.OnRoll(piece, run.Stock.WidthMm, RollSheets.LeftMm(run.Stock), margin, run.Press.Web.LeadMm, repeat));

    private static LayoutResult Repeated(Item item, FormedRun run, Func<Piece, double, RepeatWish, LayoutResult> solve)
    {
        List<FormedItem> alone = [.. run.Items.Where(i => i.Ready.Item.Id == item.Id)];
        RunPieces pieces = RunPieces.Of(run, alone, run.Stock.Size, _ => false);
        return pieces.Printed(solve(pieces.Pieces[0], MarginMm(alone, run), item.Repeat ?? new()), run.Press.EdgeMarginMm);
    }

    // Discs for a camera stand about all pieces of a sheet.
    internal static double MarginMm(IReadOnlyList<FormedItem> items, FormedRun run) =>
        run.Press.EdgeMarginMm + items.Max(i => i.Ready.Item.Marks?.RegisterRoomMm ?? 0);

    // Upright along the flutes: the sheet is drawn with its flutes upright, and such pieces may not turn.
    private static SizeMm SheetFrame(FormedRun run)
    {
        bool? along = run.Items.Select(i => i.Ready.Item.UpAlongGrain).FirstOrDefault(u => u is not null);
        bool grainUpright = run.Stock.Grain == GrainDirection.AlongLength;
        return run.Stock.Grain == GrainDirection.None || along is null || along == grainUpright ? run.Stock.Size : run.Stock.Size.Turned();
    }

    // A saw goes from edge to edge; as soon as one piece is cut to its contour, the sheet goes to the router.
    internal static CutProcess ProcessOf(IReadOnlyList<Item> items) =>
        items.Any(i => i.Finishing.Any(f => f.Kind is FinishingKind.CutContour)) ? CutProcess.Free : CutProcess.Guillotine;

    private static Belt BeltOf(FormedRun run)
    {
        PressDescription press = run.Press;
        return new(
            press.BeltWidthMm, press.MaxSheetLengthMm, [.. press.Zones.Select(z => new BeltZone(z.Id, z.StartMm, z.WidthMm))], press.Lays, press.MaxLanes,
            PinsMm: press.FrontPins);
    }

    internal static Reading<BeltPlace> OnBelt(FormedRun run, LayoutResult result)
    {
        Belt belt = BeltOf(run);
        return run.Stock.Kind switch
        {
            StockKind.Board => BeltPlaces.ForBoard(run.Stock.Id, result.Sheets[0].Sheet, result.SheetCount, belt),
            StockKind.Blank => BlankSheets.OnBelt(run, result, belt),
            _ => RollSheets.OnBelt(run, result, belt),
        };
    }
}
