using System.Text;
using Laydown.Artwork.Pages;
using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Cut paths of a sheet as SVG in millimetres, seen with its first printed face up.</summary>
/// <remarks>
/// One group for each way of cutting, named as in [ISO19593-1]. Square pieces are cut at their trim, contour pieces along the artwork's own
/// outlines; panels keep their overlap. A roll is cut across from edge to edge between its sections. Holes come from the artwork, else from the corners by rule.
/// </remarks>
internal sealed class CutDrawing
{
    /// <summary>Least distance of a hole's centre from the edge, mm; holes also keep two thicknesses. Common practice, no source.</summary>
    private const double HoleInsetMm = 10;

    /// <summary>Groups of a drawing in their order.</summary>
    internal static readonly IReadOnlyList<string> Steps = ["Cutting", "PartialCutting", "Creasing", "Folding", "Drilling", CutShape.Register];

    private readonly List<CutShape> shapes = [];
    private readonly RunContext context;
    private readonly SheetLayout sheet;
    private readonly bool mirrored;

    private CutDrawing(RunContext context, SheetLayout sheet)
    {
        this.context = context;
        this.sheet = sheet;
        mirrored = context.Run.Stack.Layers[0].Mirrored;
    }

    /// <summary>The cut paths of one sheet.</summary>
    /// <param name="context">The run.</param>
    /// <param name="number">Sheet from 0.</param>
    public static string Svg(RunContext context, int number) => Of(context, number).Text(number);

    /// <summary>The lines of one sheet.</summary>
    /// <param name="context">The run.</param>
    /// <param name="number">Sheet from 0.</param>
    public static IReadOnlyList<CutShape> Shapes(RunContext context, int number) => Of(context, number).shapes;

    private static CutDrawing Of(RunContext context, int number)
    {
        CutDrawing drawing = new(context, context.Run.Sheets[number]);
        foreach (double y in drawing.sheet.CutsAcrossMm ?? [])
            drawing.AddPath("Cutting", [new(0, y), new(drawing.sheet.Sheet.WidthMm, y)], closed: false);
        foreach (Placement placement in drawing.sheet.Placements)
            drawing.Add(placement);
        foreach (SheetMark disc in RunMarks.Of(context, number).Marks.Where(m => m.Kind == MarkKind.Disc))
            drawing.shapes.Add(new(CutShape.Register, [new(disc.Box.XMm + (disc.Box.WidthMm / 2), disc.Box.YMm + (disc.Box.HeightMm / 2))], false, disc.InkMm));
        return drawing;
    }

    private void Add(Placement placement)
    {
        ItemRecord record = context.Items.First(i => i.Item.Id == SheetPixels.ItemOf(placement.PieceId));
        bool seenMirrored = mirrored != placement.BackUp;
        CutMapping mapping = new(record.Item, placement, seenMirrored);
        bool contour = AddPaths(record, mapping, record.Item.Finishing.Any(f => f.Kind == FinishingKind.CutContour));
        if (FinishedOnSheet.Of(record.Item, placement, seenMirrored) is { } finished)
        {
            if (!contour && context.Stock.Kind != StockKind.Blank)
                AddPath("Cutting", finished.Allowance.IsNone ? mapping.ToSheet(mapping.Trim() ?? finished.Trim) : Corners(finished.Outer), closed: true);
            AddFolds(finished);
            shapes.AddRange(finished.Eyelets.Select(e => new CutShape("Drilling", [e], false)));
        }

        if (record.Item.Finishing.FirstOrDefault(f => f.Kind == FinishingKind.Drill) is { } drill && !DrillsItself(record))
            AddCornerHoles(record.Item, mapping, drill.CountEach);
    }

    // Gives whether an outline of the artwork cuts the piece out.
    private bool AddPaths(ItemRecord record, CutMapping mapping, bool contour)
    {
        bool cut = false;
        foreach (ArtworkPage page in record.Artwork?.Pages.Where(p => p.CutPaths.Count > 0).Take(1) ?? [])
        {
            foreach (CutPath path in page.CutPaths)
            {
                bool through = path.ProcessStep is not ("PartialCutting" or "Creasing" or "Drilling");
                PointMm[] points = [.. path.Points.Select(p => mapping.ToPicture(p, page))];
                if ((through && !contour) || !points.All(p => Holds(mapping.Part, p)))
                    continue;
                AddPath(through ? "Cutting" : path.ProcessStep, [.. points.Select(mapping.ToSheet)], path.Closed);
                cut |= through;
            }
        }

        return cut;
    }

    private static bool DrillsItself(ItemRecord record) =>
        record.Artwork?.Pages.Any(p => p.CutPaths.Any(c => c.ProcessStep == "Drilling")) ?? false;

    private static bool Holds(RectMm part, PointMm p) => part.Holds(new RectMm(p.XMm, p.YMm, 0, 0), 0.5);

    // Two holes stand in the upper corners, four in all; one stands in the middle of the upper edge.
    private void AddCornerHoles(Item item, CutMapping mapping, int count)
    {
        double inset = Math.Max(HoleInsetMm, 2 * context.Stock.ThicknessMm);
        RectMm frame = new RectMm(item.BleedMm, item.BleedMm, item.WidthMm, item.HeightMm).Grown(-inset);
        PointMm[] places = count == 1
            ? [new(frame.XMm + (frame.WidthMm / 2), frame.TopMm)]
            : [new(frame.XMm, frame.TopMm), new(frame.RightMm, frame.TopMm), new(frame.XMm, frame.YMm), new(frame.RightMm, frame.YMm)];
        foreach (PointMm place in places.Take(count).Where(p => Holds(mapping.Part, p)).Select(mapping.ToSheet))
            shapes.Add(new("Drilling", [place], false));
    }

    // A fold runs along the finished edge, through all that is folded under beside it.
    private void AddFolds(FinishedOnSheet finished)
    {
        (RectMm trim, RectMm outer) = (finished.Trim, finished.Outer);
        if (finished.Allowance.LeftMm > 0)
            AddPath("Folding", [new(trim.XMm, outer.YMm), new(trim.XMm, outer.TopMm)], closed: false);
        if (finished.Allowance.RightMm > 0)
            AddPath("Folding", [new(trim.RightMm, outer.YMm), new(trim.RightMm, outer.TopMm)], closed: false);
        if (finished.Allowance.BottomMm > 0)
            AddPath("Folding", [new(outer.XMm, trim.YMm), new(outer.RightMm, trim.YMm)], closed: false);
        if (finished.Allowance.TopMm > 0)
            AddPath("Folding", [new(outer.XMm, trim.TopMm), new(outer.RightMm, trim.TopMm)], closed: false);
    }

    private static IReadOnlyList<PointMm> Corners(RectMm r) =>
        [new(r.XMm, r.YMm), new(r.RightMm, r.YMm), new(r.RightMm, r.TopMm), new(r.XMm, r.TopMm)];

    private void AddPath(string step, IReadOnlyList<PointMm> points, bool closed) => shapes.Add(new(step, points, closed));

    private string Line(CutShape shape)
    {
        double x = shape.Points[0].XMm, y = sheet.Sheet.HeightMm - shape.Points[0].YMm;
        if (shape.DiameterMm > 0)
            return Invariant($"    <circle cx=\"{x:0.###}\" cy=\"{y:0.###}\" r=\"{shape.DiameterMm / 2:0.###}\"/>\n");
        if (shape.Points.Count == 1)
            return Invariant($"    <path d=\"M{x - 3:0.###} {y:0.###}h6M{x:0.###} {y - 3:0.###}v6\"/>\n");
        StringBuilder path = new("    <path d=\"");
        for (int i = 0; i < shape.Points.Count; i++)
            path.Append(Invariant($"{(i == 0 ? 'M' : 'L')}{shape.Points[i].XMm:0.###} {sheet.Sheet.HeightMm - shape.Points[i].YMm:0.###}"));
        return path.Append(shape.Closed ? "Z\"/>\n" : "\"/>\n").ToString();
    }

    private string Text(int number)
    {
        (double w, double h) = (sheet.Sheet.WidthMm, sheet.Sheet.HeightMm);
        StringBuilder svg = new();
        svg.Append(Invariant($"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w:0.###}mm\" height=\"{h:0.###}mm\" viewBox=\"0 0 {w:0.###} {h:0.###}\">\n"));
        svg.Append(Invariant($"  <title>Cut paths, run {Escaped(context.Run.Id)}, sheet {number + 1} of {context.Run.Sheets.Count}</title>\n"));
        svg.Append("  <desc>Millimetres. Seen with the face printed first up. Groups are named after ISO 19593-1 processing steps.</desc>\n");
        svg.Append(Invariant($"  <rect id=\"sheet\" width=\"{w:0.###}\" height=\"{h:0.###}\" fill=\"none\" stroke=\"#bbb\" stroke-width=\"0.5\" stroke-dasharray=\"6 4\"/>\n"));
        foreach (string step in Steps.Where(s => shapes.Exists(c => c.Step == s)))
        {
            string dash = step switch
            {
                "PartialCutting" => " stroke-dasharray=\"4 2\"",
                "Creasing" or "Folding" => " stroke-dasharray=\"8 2 2 2\"",
                _ => "",
            };
            string meaning = step == CutShape.Register ? "" : Invariant($" data-processing-step=\"Structural/{step}\"");
            svg.Append(Invariant($"  <g id=\"{step}\"{meaning} fill=\"none\" stroke=\"#111\" stroke-width=\"0.5\"{dash}>\n"));
            foreach (CutShape shape in shapes.Where(c => c.Step == step))
                svg.Append(Line(shape));
            svg.Append("  </g>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static string Escaped(string text) => System.Security.SecurityElement.Escape(text) ?? "";
}
