using Laydown.Layout.Panels;
using Laydown.Plan.Drawings;
using Laydown.Plan.Orders;
using Laydown.Shop.Run;

namespace Laydown.Output.Documents;

/// <summary>Draws the hanging plan of a graphic in panels as A4 PDF: for those who hang it, who do not have the set-up sheet.</summary>
internal static class HangingPdf
{
    private const float Body = 9;

    /// <summary>The plan of an item.</summary>
    internal static byte[] Make(RunContext context, string itemId, PanelPlan plan)
    {
        Item? item = context.Items.FirstOrDefault(i => i.Item.Id == itemId)?.Item;
        string title = item?.Title ?? itemId;
        return PdfPaper.Make(
            Invariant($"Hanging plan {itemId}"), context.ShopName, Invariant($"{itemId} · {title} · {context.Run.Id} · {context.Stock.Name}"),
            paper => Draw(paper, context, itemId, title, plan, item?.BleedMm ?? 0));
    }

    private static void Draw(PdfPaper paper, RunContext context, string itemId, string title, PanelPlan plan, double bleedMm)
    {
        paper.Text("HANGING PLAN", PdfPaper.Left, 44, PageFonts.Bold, 8, PdfPaper.Quiet);
        paper.Text(context.ShopName, PdfPaper.Left + 76, 44, PageFonts.Regular, 8, PdfPaper.Quiet);
        paper.Text(itemId, PdfPaper.Left - 1, 74, PageFonts.MonoBold, 26, PdfPaper.Ink);
        paper.Text(title, PdfPaper.Left, 93, PageFonts.Bold, 11, PdfPaper.Ink);
        paper.Text(Invariant($"{plan.Panels.Count} panels"), PdfPaper.Right, 74, PageFonts.Mono, 12, PdfPaper.Ink, SkiaSharp.SKTextAlign.Right);
        paper.Rule(102, 1.6f);
        paper.Y = 110;
        paper.Draw(new("Hanging plan", HangingDrawing.Draw(title, plan, bleedMm)), PdfPaper.Left, PdfPaper.Right - PdfPaper.Left, 360);
        paper.Y += 8;
        paper.Rule(paper.Y, 0.6f);
        paper.Y += 6;
        paper.Paragraph(Invariant($"In this order: {HangingWords.Order(plan)}. All panels were printed one after the other and the same way up; the label outside the trim bears the number. Places are of the print, bleed contained."),
            PdfPaper.Left, PdfPaper.Right - PdfPaper.Left, Body, PageFonts.Bold);
        paper.Y += 4;
        foreach (string step in HangingWords.Steps(plan))
        {
            paper.Need(15);
            paper.Box(PdfPaper.Left, paper.Y + 2, 9, 9, 0.7f);
            paper.Paragraph(step, PdfPaper.Left + 18, PdfPaper.Right - PdfPaper.Left - 18, Body);
            paper.Y += 2;
        }

        paper.Y += 6;
        foreach (string note in Notes(plan))
            paper.Paragraph(note, PdfPaper.Left, PdfPaper.Right - PdfPaper.Left, 8, color: PdfPaper.Quiet);
    }

    // Common practice, no source.
    private static IEnumerable<string> Notes(PanelPlan plan)
    {
        yield return "Draw a level line and a plumb line first; set the first panel to them, the others to the first. Measure the wall before the first panel goes up.";
        if (plan.Seams.Any(s => s.OverlapMm > 0))
            yield return "Where two panels show the same, either leave the overlap as it is or cut through both along a rule and take the strips away.";
        if (plan.Seams.Any(s => !s.Upright && s.OverlapMm > 0))
            yield return "Upper panels lie over lower ones, so that water runs off.";
        yield return "Two people for panels longer than a man is tall. Ladders, power in the wall and the maker's sheet of the film: local rules and the maker's manual rule over this paper.";
    }
}
