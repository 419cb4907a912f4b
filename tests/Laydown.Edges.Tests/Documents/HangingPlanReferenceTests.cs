using Laydown.Geometry.Shapes;
using Laydown.Layout.Marks;
using Laydown.Layout.Panels;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Output.Documents;
using Laydown.Plan.Drawings;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Shop.Layout;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.Documents;

/// <summary>A wall from its order to layout, marks and hanging plan; the paper as poppler and qpdf read it.</summary>
public sealed class HangingPlanReferenceTests : IDisposable
{
    private const string Wall = "wall-film-roll";
    private static readonly Dictionary<string, Shape> NoContours = [];
    private readonly Shopfloor floor = new();

    [Fact]
    public void Panels_lie_along_the_roll_in_order_and_the_same_way_up_and_each_has_room_for_its_marks()
    {
        RunContext context = Walled(new(20, 30, PanelWidths.Free, LeastWidthMm: 900), [new(new(1250, 0, 60, 2400), 500)]);
        SheetLayout sheet = Assert.Single(context.Run.Sheets);

        Assert.Equal(Enumerable.Range(1, 5).Select(i => Invariant($"TW-2001-1/{i}")), sheet.Placements.OrderBy(p => p.Place.YMm).Select(p => p.PieceId));
        Assert.All(sheet.Placements, p => Assert.Equal((0, false), (p.QuarterTurns, p.Turned)));
        PanelPlan plan = Assert.Single(RunMarks.PanelPlans(context.Run)).Plan;
        Assert.DoesNotContain(plan.Seams, s => s.Zone.XMm - 30 < 1310 && s.Zone.RightMm - 30 > 1250);
        SheetMarks marks = RunMarks.Of(context, 0);
        Assert.Empty(marks.LeftOut);
        Assert.Equal(5, marks.Marks.Count(m => m.Kind == MarkKind.Code));
        Assert.Equal(5, marks.Marks.Count(m => m.Kind == MarkKind.Label));
        Assert.All(marks.Marks, m => Assert.DoesNotContain(sheet.Placements, p => p.Place.Overlaps(m.Box, 0.01)));
    }

    [Fact]
    public void Panels_without_a_wish_are_equal_and_overlap_by_two_centimetres()
    {
        PanelPlan plan = Assert.Single(RunMarks.PanelPlans(Walled(null, null).Run)).Plan;

        Assert.All(plan.Seams, s => Assert.Equal(20, s.OverlapMm, 9));
        Assert.InRange(plan.Panels.Max(p => p.Part.WidthMm) - plan.Panels.Min(p => p.Part.WidthMm), 0, 1);
    }

    [Fact]
    public void A_wall_that_cannot_be_parted_as_wished_is_refused_and_says_so()
    {
        Reading<LaidOut> laid = SheetLayouts.Of(Formed(Item(new(SeamsAtMm: [100], SeamsOnlyThere: true), null)), NoContours, CancellationToken.None);

        Assert.Contains("no seams can lie so", Assert.Single(laid.Faults).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void The_hanging_plan_is_a_sound_PDF_with_every_panel_its_overlap_and_the_order()
    {
        RunContext context = Walled(new(20, 20, Pattern: PanelPattern.Grid, LeastWidthMm: 300), null, height: 2400);
        (string item, PanelPlan plan) = Assert.Single(RunMarks.PanelPlans(context.Run));
        string path = PdfTools.Write(floor.Folder, "hanging.pdf", new RunDocuments().HangingPdf(context, item, plan));
        (int sound, string said) = PdfTools.Run("qpdf", "--check", path);
        Assert.True(sound == 0, said);

        string words = PdfTools.Text(path);
        foreach (Panel panel in plan.Panels)
            Assert.Contains(Invariant($"Panel {panel.Number}, {panel.Part.WidthMm:0.##} × {panel.Part.HeightMm:0.##} mm"), words, StringComparison.Ordinal);
        foreach (PanelSeam seam in plan.Seams)
            Assert.Contains(Invariant($"over {seam.Under} by {seam.OverlapMm:0.#} mm"), words, StringComparison.Ordinal);
        Assert.Contains(HangingWords.Order(plan), words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_set_up_sheet_tells_of_panels_marks_and_eyelets()
    {
        RunContext context = Walled(new(20, 30, PanelWidths.Free), null);
        PdfTools.Write(floor.Folder, "set-up-wall.pdf", new RunDocuments().SetUpPdf(context));
        string words = PdfTools.Text(Path.Combine(floor.Folder, "set-up-wall.pdf"));

        Assert.Contains("printed in the order of their numbers", words, StringComparison.Ordinal);
        Assert.Contains("5 labels, 5 codes", words, StringComparison.Ordinal);
        Assert.Contains("Hanging plan of", words, StringComparison.Ordinal);
    }

    public void Dispose() => floor.Dispose();

    private RunContext Walled(PanelWish? panels, IReadOnlyList<SeamKeepOut>? keepOuts, double height = 2400)
    {
        Item item = Item(panels, keepOuts, height);
        FormedRun run = Formed(item);
        LaidOut laid = SheetLayouts.Of(run, NoContours, CancellationToken.None).Value;
        RunRequest request = new(
            "R-20261126-04", run.Press, run.InkSet, run.Stock, run.Condition, floor.Catalogue.Rates, run.Stack,
            [new(item, "TW-2001", [], null, null, null)], laid.Sheets, laid.Belt);
        Laydown.Plan.Runs.Run planned = RunPlanner.Plan(request).Value;
        ItemRecord record = new(item, "TW-2001", "A customer", ItemState.Planned, "/nowhere/a.pdf", null, [], [], run.Stack, planned.Id);
        return new(
            floor.Catalogue.ShopName, planned, run.Press, run.Press.FindMode(planned.Mode.ModeId)!, run.InkSet, run.Stock, run.Condition, "none.icc", "EUR", [record]);
    }

    private FormedRun Formed(Item item)
    {
        ReadyItem ready = new(item, "TW-2001", null, null) { SeamKeepOuts = item.SeamKeepOuts ?? [] };
        FormedRuns formed = RunFormer.Form([ready], new PressRoom(floor.Catalogue.Presses, floor.Catalogue.InkSets, floor.Catalogue.Stocks, floor.Catalogue.Conditions));
        return formed.Runs[0];
    }

    private static Item Item(PanelWish? panels, IReadOnlyList<SeamKeepOut>? keepOuts, double height = 2400) =>
        Shopfloor.Item("TW-2001-1", "Wall of the hall", Wall, 6400, height, 1) with
        {
            BleedMm = 30,
            Panels = panels,
            SeamKeepOuts = keepOuts,
            Marks = new(Register: true),
        };
}
