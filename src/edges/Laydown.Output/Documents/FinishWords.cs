using Laydown.Layout.Marks;
using Laydown.Layout.Panels;
using Laydown.Plan.Drawings;
using Laydown.Plan.Orders;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Output.Documents;

/// <summary>What the set-up sheet says of panels, marks, folds and eyelets.</summary>
internal static class FinishWords
{
    /// <summary>One row for each thing that there is.</summary>
    internal static IReadOnlyList<NamedValue> Of(RunContext context) =>
        [.. RunMarks.PanelPlans(context.Run).Select(p => Panels(p.ItemId, p.Plan)), .. Marks(context), .. context.Items.SelectMany(Folds)];

    private static NamedValue Panels(string itemId, PanelPlan plan)
    {
        IReadOnlyList<double> overlaps = [.. plan.Seams.Select(s => Math.Round(s.OverlapMm, 1)).Distinct().Order()];
        string seams = overlaps.Count switch { 0 => "", 1 when plan.SeamBleedMm > 0 => Invariant($", butting, each trimmed by {plan.SeamBleedMm:0.##} mm at its seams"), 1 => Invariant($", overlap {overlaps[0]:0.#} mm"), _ => Invariant($", overlaps {overlaps[0]:0.#} to {overlaps[^1]:0.#} mm") };
        return new("Panels", Invariant($"{itemId}: {plan.Panels.Count}{seams}; printed in the order of their numbers, all the same way up, in one go: do not stop between them. {Sentence(HangingWords.Order(plan))}"));
    }

    private static IEnumerable<NamedValue> Marks(RunContext context)
    {
        List<SheetMarks> sheets = [.. Enumerable.Range(0, context.Run.Sheets.Count).Select(i => RunMarks.Of(context, i))];
        List<SheetMark> marks = [.. sheets.SelectMany(s => s.Marks)];
        if (marks.Count > 0)
        {
            string kinds = string.Join(", ", marks.GroupBy(m => m.Kind).OrderBy(g => g.Key).Select(g => Invariant($"{g.Count()} {Word(g.Key, g.Count())}")));
            yield return new("Marks", Invariant($"{kinds}; in black of the first colour layer, outside every finished piece."));
        }

        List<string> left = [.. sheets.SelectMany(s => s.LeftOut)];
        if (left.Count > 0)
            yield return new("No room for", string.Join("; ", left.Take(6)) + (left.Count > 6 ? Invariant($"; and {left.Count - 6} more") : "") + ".");
    }

    private static IEnumerable<NamedValue> Folds(ItemRecord record)
    {
        Item item = record.Item;
        EdgeRoom fold = FinishingPlaces.Allowance(item), pockets = FinishingPlaces.Pockets(item);
        if (!fold.IsNone)
        {
            double[] flat = [.. new[] { pockets.LeftMm, pockets.RightMm, pockets.BottomMm, pockets.TopMm }.Where(mm => mm > 0)];
            string pocket = flat.Length == 0 ? ""
                : Invariant($", pocket stitched {flat.Max():0.#} mm from the fold, for poles thinner than {Math.Floor(FinishingPlaces.ThickestPoleMm(flat.Min()))} mm");
            yield return new("Fold under", Invariant($"{item.Id}: left {fold.LeftMm:0.#}, right {fold.RightMm:0.#}, bottom {fold.BottomMm:0.#}, top {fold.TopMm:0.#} mm{pocket}; cut outside of it."));
        }

        int eyelets = FinishingPlaces.Eyelets(item).Count;
        if (eyelets > 0)
            yield return new("Eyelets", Invariant($"{item.Id}: {eyelets} on each piece, places in the cut file."));
    }

    private static string Word(MarkKind kind, int count)
    {
        string one = kind switch
        {
            MarkKind.Disc => "disc",
            MarkKind.FaceCross => "cross",
            MarkKind.Cut => "cut mark",
            MarkKind.Fold => "fold mark",
            MarkKind.Stitch => "stitch mark",
            MarkKind.Eyelet => "eyelet mark",
            MarkKind.Label => "label",
            _ => "code",
        };
        return count == 1 ? one : one == "cross" ? "crosses" : one + "s";
    }

    private static string Sentence(string words) => Invariant($"{char.ToUpperInvariant(words[0])}{words[1..]}.");
}
