using Laydown.Layout.Panels;
using Laydown.Layout.Sheets;
using Laydown.Plan.Drawings;
using Laydown.Plan.Runs;
using Laydown.Shop.Run;

namespace Laydown.Output.Documents;

/// <summary>The drawings of a run's papers.</summary>
internal static class RunDrawings
{
    /// <summary>Most different sheets that are drawn; the rest are named.</summary>
    private const int MostSheets = 6;

    /// <summary>The belt from above, to scale, with the first sheet on it.</summary>
    internal static Drawing Belt(RunContext context) =>
        new("Belt from above", BeltDrawing.Draw(context.Press, context.Run.Belt, context.Run.Sheets));

    /// <summary>Both faces of the first sheet on the belt, to scale; null where one face is printed.</summary>
    internal static Drawing? Faces(RunContext context) => FaceWords.Applies(context.Run) ? new("Both faces on the belt", FacesDrawing.Draw(context.Press, context.Run)) : null;

    /// <summary>The section through sheet and ink.</summary>
    internal static Drawing Layers(RunContext context) => new("Section through sheet and ink", CrossSection.Draw(context.Run.Stack, context.Stock));

    /// <summary>Each different sheet with its pieces, to scale; of very many the first.</summary>
    internal static IReadOnlyList<Drawing> Sheets(RunContext context)
    {
        Dictionary<string, string> names = context.Run.Sheets.SelectMany(s => s.Placements).Select(p => p.PieceId).Distinct(StringComparer.Ordinal)
            .ToDictionary(id => id, id => NameOf(context.Run, id), StringComparer.Ordinal);
        return
        [
            .. context.Run.Sheets.Take(MostSheets).Select((sheet, i) => new Drawing(SheetTitle(context, sheet, i),
                BoardDrawing.Draw(sheet, names, context.Stock.Grain, RunMarks.Of(context, i).Marks))),
            .. RunMarks.PanelPlans(context.Run).Select(p => Hanging(context, p.ItemId, p.Plan)),
        ];
    }

    private static Drawing Hanging(RunContext context, string itemId, PanelPlan plan)
    {
        string title = NameOf(context.Run, itemId);
        double bleed = context.Items.FirstOrDefault(i => i.Item.Id == itemId)?.Item.BleedMm ?? 0;
        return new(Invariant($"Hanging plan of {title}, {plan.Panels.Count} panels; also as a paper of its own"), HangingDrawing.Draw(title, plan, bleed));
    }

    private static string SheetTitle(RunContext context, SheetLayout sheet, int index)
    {
        Laydown.Plan.Runs.Run run = context.Run;
        string on = context.Beside.Count > 0 ? Invariant($", {context.StockOf(sheet).Name}") : "";
        string of = run.Sheets.Count > 1 ? Invariant($"Sheet {index + 1} of {run.Sheets.Count}") : "Sheet";
        string times = sheet.Repeats > 1 ? Invariant($", printed {sheet.Repeats} times") : "";
        string more = index == MostSheets - 1 && run.Sheets.Count > MostSheets ? Invariant($"; {run.Sheets.Count - MostSheets} more in the run folder") : "";
        return Invariant($"{of}{on}{times}, {sheet.FillPercent:0} % under pieces{more}");
    }

    // A panel keeps its number behind the title of its item.
    private static string NameOf(Laydown.Plan.Runs.Run run, string pieceId)
    {
        int slash = pieceId.LastIndexOf('/');
        string itemId = slash > 0 ? pieceId[..slash] : pieceId;
        RunItem? item = run.Items.FirstOrDefault(i => string.Equals(i.ItemId, itemId, StringComparison.Ordinal));
        return item is null ? pieceId : slash > 0 ? Invariant($"Panel {pieceId[(slash + 1)..]}, {item.Title}") : item.Title;
    }
}
