using Laydown.Layout.Hands;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;
using Laydown.Shop.Build;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Layout;

/// <summary>Opens the layout of a run to be worked on by hand.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">What it remembers.</param>
/// <param name="plan">Looks of the shop, and what times are corrected by; null where no item is printed from a look and times stand as reckoned.</param>
public sealed class OpenLayout(Catalogue catalogue, IShopStore store, PlanRuns? plan)
{
    /// <summary>The layout with what it is judged by.</summary>
    /// <returns>The layout, or why there is none to work on: no such run, a run that was dissolved, blanks, sheets of several sizes.</returns>
    public async Task<Reading<OpenedLayout>> OpenAsync(string runId, CancellationToken cancellation)
    {
        RunRecord? record = await store.RunAsync(runId, cancellation);
        if (record is null)
            return Refused(runId, "id", "no run of that id", "the id of a planned run");
        IReadOnlyList<ItemRecord> items = [.. (await store.OrdersAsync(cancellation)).SelectMany(o => o.Items)];
        Reading<RunContext> context = RunContexts.Gather(record.Run, catalogue, items, plan?.Looks);
        Laydown.Plan.Log.EstimateModel? learnt = plan is null ? null : await plan.LearntAsync(cancellation);
        return context.Then(c => Of(record, c)).Then(o => Reading.Of(o with { Learnt = learnt }));
    }

    private static Reading<OpenedLayout> Of(RunRecord record, RunContext context)
    {
        Laydown.Plan.Runs.Run run = record.Run;
        if (context.Stock.Kind == StockKind.Blank)
            return Refused(run.Id, "stock", "pre-cut blanks, one piece on each", "boards or a roll");
        if (context.Stock.Kind == StockKind.Roll && run.Belt.Lanes.Count > 1)
            return Refused(run.Id, "sheets", "two rolls side by side", "boards or one roll");
        if (run.Sheets.Any(s => s.Faces is { OneFile: true }))
            return Refused(run.Id, "sheets", "fronts and backs on one sheet, each back where its front comes to lie when the sheet is turned", "boards printed on one face or sheetwise; moved by hand, front and back would part");
        if (run.Sheets.Select(s => s.Sheet.WidthMm).Distinct().Count() > 1 || (context.Stock.Kind == StockKind.Board && run.Sheets.Select(s => s.Sheet).Distinct().Count() > 1))
            return Refused(run.Id, "sheets", "sheets of several sizes", "sheets of one size");
        FormedRun formed = new(
            context.Press, context.Condition, context.InkSet, context.Stock, run.Stack, run.Mode.ModeId,
            [.. context.Items.Select(i => new FormedItem(ReadyItems.Of(i.Item, i.OrderId, i.Artwork), i.Stack ?? run.Stack))], []);
        IReadOnlyDictionary<string, string> names = run.Sheets.SelectMany(s => s.Placements).Select(p => p.PieceId).Distinct(StringComparer.Ordinal)
            .ToDictionary(id => id, id => NameOf(run, id), StringComparer.Ordinal);
        HandRooms rooms = HandRooms.Of(formed.Items.Select(i => i.Ready.Item), run.Sheets.Any(s => s.Outlines is { Count: > 0 }));
        HandRules rules = RulesOf(formed, run, rooms);
        return Reading.Of(new OpenedLayout(record, context, rules, names, HandSheets.From(rooms.Grown(run.Sheets)), LayoutMark.Of(run.Sheets), Closed(record)) { Formed = formed, Rooms = rooms });
    }

    // The pieces are those of the layout as it was planned, panels and all.
    private static HandRules RulesOf(FormedRun formed, Laydown.Plan.Runs.Run run, HandRooms rooms)
    {
        Dictionary<string, Item> items = formed.Items.ToDictionary(i => i.Ready.Item.Id, i => i.Ready.Item, StringComparer.Ordinal);
        IReadOnlyList<Piece> pieces = [.. run.Sheets.SelectMany(s => s.Placements.Select(p => (Placement: p, s.Repeats)))
            .GroupBy(p => p.Placement.PieceId, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => PieceOf(PieceRoom.Grown(g.First().Placement, rooms.Of(g.Key)), g.Sum(p => p.Repeats), items.GetValueOrDefault(SheetLayouts.ItemIdOf(g.Key)), formed.Stock))];
        bool roll = formed.Stock.Kind == StockKind.Roll;
        SheetLayout first = run.Sheets[0];
        double leftMm = Math.Max(Math.Min(formed.Stock.LengthMm, formed.Stock.OnHand * 1000.0), first.Sheet.HeightMm);
        PieceOutline[] outlines = [.. run.Sheets.SelectMany(s => s.Outlines ?? []).DistinctBy(o => o.PieceId, StringComparer.Ordinal)];
        return new(
            pieces, roll ? new(first.Sheet.WidthMm, leftMm) : first.Sheet, first.EdgeMarginMm, GapOf(formed),
            outlines.Length > 0 ? CutProcess.Free : SheetLayouts.ProcessOf([.. formed.Items.Select(i => i.Ready.Item)]))
        {
            IsRoll = roll,
            LeadMm = roll ? formed.Press.Web.LeadMm : 0,
            Faces = first.Faces,
            Contours = outlines.Length > 0 ? new(pieces, outlines) : null,
            KeepOuts = run.Sheets.All(s => SameRects(s.KeepOuts, first.KeepOuts)) ? first.KeepOuts ?? [] : [],
            StockId = run.Sheets.All(s => s.StockId == first.StockId) ? first.StockId : null,
        };
    }

    private static bool SameRects(IReadOnlyList<RectMm>? one, IReadOnlyList<RectMm>? other) => (one ?? []).SequenceEqual(other ?? []);

    // Items that are repeated in even steps may ask for less between two than others need.
    private static double GapOf(FormedRun formed) =>
        formed.Items.Select(i => i.Ready.Item.Repeat is { } repeat ? Math.Min(repeat.GapAcrossMm, repeat.GapUpMm) : SheetLayouts.GapMm).Append(SheetLayouts.GapMm).Min();

    private static Piece PieceOf(Placement placed, int quantity, Item? item, Stock stock) => new(
        placed.PieceId, placed.Turned ? placed.Place.Size.Turned() : placed.Place.Size, placed.Part is null ? item?.BleedMm ?? 0 : 0, quantity,
        MayTurn: placed.Part is null && (item?.UpAlongGrain is null || stock.Grain == GrainDirection.None), placed.Part, placed.SeamBleedMm);

    private static InputFault? Closed(RunRecord record) => record.State == RunState.InProgress
        ? new(Invariant($"run {record.Run.Id}"), null, "state", "its press files are being made", "a run that is not being made; cancel the making, or wait for its end")
        : ReleaseLayout.Holding(record);

    private static string NameOf(Laydown.Plan.Runs.Run run, string pieceId)
    {
        string[] parts = pieceId.Split('/', 2);
        string title = run.Items.FirstOrDefault(i => string.Equals(i.ItemId, parts[0], StringComparison.Ordinal))?.Title ?? parts[0];
        return parts.Length > 1 ? Invariant($"{title}, panel {parts[1]}") : title;
    }

    private static Reading<OpenedLayout> Refused(string runId, string field, string found, string wanted) =>
        Reading.Refused<OpenedLayout>(new InputFault(Invariant($"run {runId}"), null, field, found, wanted));
}
