using Laydown.Geometry.Shapes;
using Laydown.Layout.Boards;
using Laydown.Layout.Lanes;
using Laydown.Layout.Panels;
using Laydown.Layout.Rolls;
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

    /// <summary>Two panels of a wall graphic overlap by this much, mm (common practice, no source).</summary>
    private const double OverlapMm = 20;

    /// <summary>Bare roll before and after the pieces, mm (common practice, no source).</summary>
    internal const double LeadMm = 150;

    /// <summary>What a blank and its piece may differ, mm (common practice, no source).</summary>
    private const double BlankToleranceMm = 1;

    /// <summary>Shorter side a rest of a board must have to be kept, mm (common practice, no source).</summary>
    private const double OffcutLeastSideMm = 150;

    /// <summary>The layouts, or why the stock does not go onto the belt. Pieces without a place come back with the layouts of the others.</summary>
    /// <param name="run">The formed run.</param>
    /// <param name="contours">Contours of items that are cut to one, by item id, mm of the printed picture.</param>
    /// <param name="cancellation">Ends the work.</param>
    /// <param name="tries">How much is tried on boards after the plain orders; 0 for a quick look.</param>
    public static Reading<LaidOut> Of(FormedRun run, IReadOnlyDictionary<string, Shape> contours, CancellationToken cancellation, int tries = Tries)
    {
        IReadOnlyList<Item> items = [.. run.Items.Select(i => i.Ready.Item)];
        LayoutResult result = run.Stock.Kind switch
        {
            StockKind.Roll => OnRoll(items, run, cancellation),
            StockKind.Blank => BlankLayout.Solve([.. items.Select(i => PieceOf(i, run.Stock))], run.Stock.Size, BlankToleranceMm),
            _ when contours.Count > 0 => new ContourSheets(GapMm, run.Stack.Layers[0].Mirrored).OnBoards(
                [.. items.Select(i => PieceOf(i, run.Stock))], contours, SheetFrame(run), run.Press.EdgeMarginMm, OffcutLeastSideMm, cancellation),
            _ => OnBoards(items, run, tries, cancellation),
        };
        if (result.Sheets.Count == 0)
            return Reading.Refused<LaidOut>([.. result.Unplaced.Select(Fault)]);
        return OnBelt(run, result).Then(belt => Reading.Of(new LaidOut(result.Sheets, belt, result.Unplaced)));
    }

    /// <summary>A piece without a place, as the fault of its item.</summary>
    public static InputFault Fault(UnplacedPiece piece) =>
        new(Invariant($"item {ItemIdOf(piece.PieceId)}"), null, "layout", Invariant($"{piece.Copies} × {piece.Found}"), piece.Wanted);

    /// <summary>The item a piece belongs to: its id without the number of the panel.</summary>
    public static string ItemIdOf(string pieceId) => pieceId.Split('/')[0];

    private static LayoutResult OnBoards(IReadOnlyList<Item> items, FormedRun run, int tries, CancellationToken cancellation)
    {
        BoardRules rules = new(SheetFrame(run), run.Press.EdgeMarginMm, GapMm, ProcessOf(items), Iterations: tries);
        return BoardLayout.Solve([.. items.Select(i => PieceOf(i, run.Stock))], rules, cancellation);
    }

    private static LayoutResult OnRoll(IReadOnlyList<Item> items, FormedRun run, CancellationToken cancellation)
    {
        double printable = run.Stock.WidthMm - (2 * run.Press.EdgeMarginMm);
        double leftMm = Math.Min(run.Stock.LengthMm, run.Stock.OnHand * 1000.0);
        IReadOnlyList<Piece> pieces = [.. items.SelectMany(i => PanelSplit.Split(PieceOf(i, run.Stock), printable, OverlapMm))];
        RollRules rules = new(run.Stock.WidthMm, leftMm, run.Press.EdgeMarginMm, GapMm, LeadMm, LeadMm, ProcessOf(items));
        return RollLayout.Solve(pieces, rules, cancellation);
    }

    // Upright along the flutes: the sheet is drawn with its flutes upright, and such pieces may not turn.
    private static SizeMm SheetFrame(FormedRun run)
    {
        bool? along = run.Items.Select(i => i.Ready.Item.UpAlongGrain).FirstOrDefault(u => u is not null);
        bool grainUpright = run.Stock.Grain == GrainDirection.AlongLength;
        return run.Stock.Grain == GrainDirection.None || along is null || along == grainUpright ? run.Stock.Size : run.Stock.Size.Turned();
    }

    private static Piece PieceOf(Item item, Stock stock) => new(
        item.Id, item.Printed, item.BleedMm, item.Quantity, MayTurn: item.UpAlongGrain is null || stock.Grain == GrainDirection.None);

    // A saw goes from edge to edge; as soon as one piece is cut to its contour, the sheet goes to the router.
    internal static CutProcess ProcessOf(IReadOnlyList<Item> items) =>
        items.Any(i => i.Finishing.Any(f => f.Kind is FinishingKind.CutContour)) ? CutProcess.Free : CutProcess.Guillotine;

    internal static Reading<BeltPlace> OnBelt(FormedRun run, LayoutResult result)
    {
        PressDescription press = run.Press;
        Belt belt = new(
            press.BeltWidthMm, press.MaxSheetLengthMm, [.. press.Zones.Select(z => new BeltZone(z.Id, z.StartMm, z.WidthMm))], press.Lays, press.MaxLanes);
        if (run.Stock.Kind == StockKind.Board)
            return BeltPlaces.ForBoard(run.Stock.Id, result.Sheets[0].Sheet, result.SheetCount, belt);
        if (run.Stock.Kind == StockKind.Blank)
            return LanePlan.Solve(run.Stock.Id, run.Stock.Size, result.SheetCount, mayTurn: true, belt);

        RollStation? station = press.Rolls.FirstOrDefault(r => r.MaxWidthMm >= run.Stock.WidthMm);
        return station is null
            ? Reading.Refused<BeltPlace>(new InputFault(run.Stock.Id, null, "widthMm", Invariant($"{run.Stock.WidthMm:0} mm"), "a roll that a station takes"))
            : BeltPlaces.ForRoll(run.Stock.Id, run.Stock.WidthMm, result.Sheets[0].Sheet.HeightMm, station.StartMm, belt);
    }
}
