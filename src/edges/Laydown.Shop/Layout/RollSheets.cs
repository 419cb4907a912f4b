using Laydown.Geometry.Shapes;
using Laydown.Layout.Lanes;
using Laydown.Layout.Rolls;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>Lays the items of a run out on its roll, or on two rolls side by side that advance together: a sheet for each roll.</summary>
/// <param name="run">The run.</param>
/// <param name="contours">Contours of items that are cut to one, by item id, mm of the printed picture.</param>
/// <param name="tries">How much is tried after the plain orders; 0 for a quick look.</param>
internal sealed class RollSheets(FormedRun run, IReadOnlyDictionary<string, Shape> contours, int tries)
{
    /// <summary>Placings that one order of the old count is worth, as the search of one roll counts.</summary>
    private const long WorkOfAnOrder = 40_000;

    /// <summary>Iterations of the search for contours that one order is worth.</summary>
    private const long ContourIterations = 8;

    private readonly RollWeb web = run.Press.Web;

    /// <summary>Length that can be taken of a stock in one piece, mm.</summary>
    internal static double LeftMm(Stock stock) => Math.Min(stock.LengthMm, stock.OnHand * 1000.0);

    /// <summary>The layouts of some of the run's items.</summary>
    internal LayoutResult Of(IReadOnlyList<FormedItem> items, CancellationToken cancellation)
    {
        double margin = SheetLayouts.MarginMm(items, run), widest = run.Beside.Append(run.Stock).Max(s => s.WidthMm);
        SizeMm most = new(widest - (2 * margin), LeftMm(run.Stock) - (2 * web.LeadMm));
        if (ByContour(items, most))
            return run.Beside.Count > 0 && Nested(items, PairOf(), margin, cancellation) is { Sheets.Count: 2 } both ? both : Nested(items, [(run.Stock.Id, LeftMm(run.Stock))], margin, cancellation);

        RunPieces pieces = RunPieces.Of(run, items, most, item => item.Panels is not null || item.Printed.WidthMm > most.WidthMm);
        if (pieces.Pieces.Count == 0)
            return pieces.Printed(new([], []), run.Press.EdgeMarginMm);
        return pieces.Printed(
            run.Beside.Count > 0 && SideBySide(pieces.Pieces, items, margin, cancellation) is { } pair ? pair : Alone(pieces.Pieces, items, margin, cancellation),
            run.Press.EdgeMarginMm);
    }

    /// <summary>How the rolls lie on the belt: at their stations, the zones under them open.</summary>
    internal static Reading<BeltPlace> OnBelt(FormedRun run, LayoutResult result, Belt belt)
    {
        double lengthMm = result.Sheets.Max(s => s.Sheet.HeightMm);
        if (run.Beside.Count > 0 && IsPair(result.Sheets) && RollPair.Of(run.Press, run.Stock, run.Beside[0]) is { } pair)
            return pair.OnBelt(lengthMm, belt);

        RollStation? station = run.Press.Rolls.FirstOrDefault(r => r.MaxWidthMm >= run.Stock.WidthMm);
        return station is null
            ? Reading.Refused<BeltPlace>(new InputFault(run.Stock.Id, null, "widthMm", Invariant($"{run.Stock.WidthMm:0} mm"), "a roll that a station takes"))
            : BeltPlaces.ForRoll(run.Stock.Id, run.Stock.WidthMm, lengthMm, station.StartMm, belt);
    }

    /// <summary>Whether sheets are those of two rolls side by side: two that name their roll.</summary>
    internal static bool IsPair(IReadOnlyList<SheetLayout> sheets) => sheets.Count == 2 && sheets.All(s => s.StockId is not null);

    // Contours lie in each other's rectangles; what is parted into panels, or needs room for labels or folds about it, stays a rectangle.
    private bool ByContour(IReadOnlyList<FormedItem> items, SizeMm most) =>
        items.Any(i => contours.ContainsKey(i.Ready.Item.Id))
        && items.All(i => i.Ready.Item is { Panels: null } item && PieceRoom.Of(item).IsNone && (item.Printed.WidthMm <= most.WidthMm || item.Printed.HeightMm <= most.WidthMm));

    private LayoutResult Nested(IReadOnlyList<FormedItem> items, IReadOnlyList<(string Id, double LengthMm)> rolls, double margin, CancellationToken cancellation) =>
        new ContourSheets(SheetLayouts.GapMm, run.Stack.Layers[0].Mirrored).OnRolls(
            [.. items.Select(i => RunPieces.WholeOf(i.Ready.Item, run.Stock))], contours,
            [.. rolls.Select((r, i) => (r.Id, new SizeMm(i == 0 ? run.Stock.WidthMm : run.Beside[0].WidthMm, r.LengthMm)))], margin, web, tries * ContourIterations, cancellation);

    // Two rolls of one stock share what is on hand.
    private IReadOnlyList<(string Id, double LengthMm)> PairOf()
    {
        double half = Math.Min(run.Stock.LengthMm, run.Stock.OnHand * 500.0);
        return run.Beside[0].Id == run.Stock.Id
            ? [(run.Stock.Id, half), (run.Stock.Id, half)]
            : [(run.Stock.Id, LeftMm(run.Stock)), (run.Beside[0].Id, LeftMm(run.Beside[0]))];
    }

    private LayoutResult Alone(IReadOnlyList<Piece> pieces, IReadOnlyList<FormedItem> items, double margin, CancellationToken cancellation) => RollLayout.Solve(
        pieces,
        new(run.Stock.WidthMm, LeftMm(run.Stock), margin, SheetLayouts.GapMm, web.LeadMm, web.LeadMm, ProcessOf(items), Iterations: tries,
            LeastSectionMm: web.LeastSectionMm, LongestSectionMm: web.LongestSectionMm),
        cancellation);

    // Null where all finds its place on one of the two: then the other is not hung.
    private LayoutResult? SideBySide(IReadOnlyList<Piece> pieces, IReadOnlyList<FormedItem> items, double margin, CancellationToken cancellation)
    {
        Stock beside = run.Beside[0];
        bool same = string.Equals(beside.Id, run.Stock.Id, StringComparison.Ordinal);
        double half = Math.Min(run.Stock.LengthMm, run.Stock.OnHand * 500.0);
        IReadOnlyList<RollStock> rolls = same
            ? [new(run.Stock.Id, run.Stock.WidthMm, half, 0, margin, Rolls: 2)]
            : [new(run.Stock.Id, run.Stock.WidthMm, LeftMm(run.Stock), 0, margin), new(beside.Id, beside.WidthMm, LeftMm(beside), 0, margin)];
        RollTerms terms = new(
            SheetLayouts.GapMm, web.LeadMm, web.LeadMm, ProcessOf(items), web.LeastSectionMm, web.LongestSectionMm, SideBySide: 2, AcrossMm: run.Press.BeltWidthMm);
        long copies = Math.Max(1, pieces.Sum(p => (long)p.Quantity));
        long fillings = terms.Process is CutProcess.Guillotine ? tries : Math.Min(100L * tries, tries * WorkOfAnOrder / copies);
        RollPlan plan = RollLayout.Solve(pieces, rolls, terms, new(Seed: 1, fillings), null, cancellation);
        cancellation.ThrowIfCancellationRequested();
        if (plan.Strips.Count < 2)
            return null;
        return new(
            [.. plan.Strips.Select(s => s.Layout with { Sheet = new(s.Layout.Sheet.WidthMm, plan.AdvanceMm), StockId = s.StockId })], plan.Unplaced);
    }

    private static CutProcess ProcessOf(IReadOnlyList<FormedItem> items) => SheetLayouts.ProcessOf([.. items.Select(i => i.Ready.Item)]);
}
