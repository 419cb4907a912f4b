using Laydown.Layout.Marks;
using Laydown.Layout.Panels;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop.Layout;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>Marks and panel plans of a run: they follow from its layouts and items, so a layout that is changed by hand changes them too.</summary>
public static class RunMarks
{
    /// <summary>The printed marks of a sheet, seen with the first printed face up; none on blanks, which are printed to their edges.</summary>
    /// <param name="context">The run.</param>
    /// <param name="number">Sheet from 0.</param>
    public static SheetMarks Of(RunContext context, int number)
    {
        ArgumentNullException.ThrowIfNull(context);
        SheetLayout sheet = context.Run.Sheets[number];
        if (context.Stock.Kind == StockKind.Blank)
            return SheetMarks.None;
        List<MarkedPiece> pieces = [];
        foreach (Placement placement in sheet.Placements)
        {
            if (MarkedOf(context, sheet, placement) is { } piece)
                pieces.Add(piece);
        }

        return SheetMarking.Of(sheet, pieces, PrintsBothFaces(context.Run.Stack));
    }

    /// <summary>How the graphics of a run were parted: one plan for each item in panels, read back from its layouts.</summary>
    public static IReadOnlyList<(string ItemId, PanelPlan Plan)> PanelPlans(Laydown.Plan.Runs.Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return [.. run.Sheets.SelectMany(s => s.Placements).Where(p => p.Part is not null && NumberOf(p.PieceId) > 0)
            .GroupBy(p => SheetLayouts.ItemIdOf(p.PieceId), StringComparer.Ordinal)
            .Select(g => (g.Key, PlanOf([.. g.DistinctBy(p => p.PieceId).OrderBy(p => NumberOf(p.PieceId))])))
            .Where(p => p.Item2.Panels.Count > 1)];
    }

    private static PanelPlan PlanOf(IReadOnlyList<Placement> panels)
    {
        IReadOnlyList<RectMm> printed = [.. panels.Select(p => p.Part ?? default)];
        SizeMm graphic = new(printed.Max(p => p.RightMm), printed.Max(p => p.TopMm));
        return PanelPlan.Of(graphic, panels[0].Turned, [.. panels.Select(p => p.PartToSeams(graphic) ?? default)]) with { SeamBleedMm = panels[0].SeamBleedMm };
    }

    private static MarkedPiece? MarkedOf(RunContext context, SheetLayout sheet, Placement placement)
    {
        ItemRecord? record = context.Items.FirstOrDefault(i => i.Item.Id == SheetLayouts.ItemIdOf(placement.PieceId));
        if (record?.Item is not { Marks: { } wish } item || FinishedOnSheet.Of(item, placement, context.Run.Stack.Layers[0].Mirrored != placement.BackUp) is not { } finished)
            return null;

        // Copies are numbered on the first of sheets that are alike.
        bool alone = sheet.Repeats == 1;
        return new(
            placement, finished.Trim, finished.Allowance, finished.Pockets, finished.Eyelets, finished.LowSide,
            Label(context, item, placement, alone), alone ? Invariant($"{placement.PieceId}:{placement.Copy}") : placement.PieceId, wish);
    }

    private static string Label(RunContext context, Item item, Placement placement, bool alone)
    {
        int number = NumberOf(placement.PieceId);
        int panels = context.Run.Sheets.SelectMany(s => s.Placements).Where(p => SheetLayouts.ItemIdOf(p.PieceId) == item.Id).Select(p => p.PieceId).Distinct().Count();
        string panel = number > 0 ? Invariant($" · panel {number} of {panels}") : "";

        // Where more are made than asked for, all of them are counted.
        int made = Math.Max(item.Quantity, context.Run.Items.FirstOrDefault(i => i.ItemId == item.Id)?.Pieces ?? 0);
        string copy = alone && made > 1 ? Invariant($" · {placement.Copy} of {made}") : "";
        return Invariant($"{item.Id}{panel}{copy} · {context.Run.Id} · {item.Title}");
    }

    private static bool PrintsBothFaces(LayerStack stack) => stack.Layers.Select(l => l.Face).Distinct().Count() > 1;

    private static int NumberOf(string pieceId)
    {
        int slash = pieceId.LastIndexOf('/');
        return slash > 0 && int.TryParse(pieceId.AsSpan(slash + 1), out int number) ? number : 0;
    }
}
