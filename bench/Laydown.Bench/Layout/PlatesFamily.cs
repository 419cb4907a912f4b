using Laydown.Instances.Plates;
using Laydown.Instances.Rectangles;
using Laydown.Layout.Packing;
using Laydown.Layout.Plates;

namespace Laydown.Bench.Layout;

/// <summary>Plates with defects, stacks and a rest at the right of the last plate; told by tables of defects.</summary>
internal sealed class PlatesFamily : ILayoutFamily
{
    public string Name => "plates";

    public bool Takes(string folder) => Directory.EnumerateFiles(folder, "*_defects.csv").Any();

    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) => [.. RectInstance.NamesIn(folder).Select(n => Task(RectInstance.Read(folder, n), values))];

    private static LayoutTask Task(RectInstance instance, LayoutValues values) => new(
        "plates", "defects, stacks, leftover", instance.Name,
        100 * values.Of(instance.Name, "best_waste") / instance.ItemArea, "best published waste over the area of the panes", LayoutSum.MeanPointsUnder,
        "at most +0.8 points in 180 s", null, budget => Solve(instance, budget));

    private static LayoutAnswer Solve(RectInstance instance, LayoutBudget budget)
    {
        PlateProblem problem = new(
            instance.Bins[0].Width, instance.Bins[0].Height,
            [.. instance.Bins.Select((_, i) => (IReadOnlyList<Box>)[.. instance.Defects.Where(d => d.Bin == i).Select(d => new Box(d.X, d.Y, d.Width, d.Height))])],
            [.. instance.Items.Select((t, i) => new PlateItem(Invariant($"{i}"), t.Width, t.Height, t.Stack))], new(100, 3500, 100, 20));
        PlateLayout layout = PlateCuts.Solve(problem, new(Workers: budget.Workers), null, budget.Stop);
        IReadOnlyList<IReadOnlyList<CutColumn>> cut = [.. layout.Plates.Select(p => (IReadOnlyList<CutColumn>)[.. p.Select(Column)])];
        return new(100.0 * PlateChecker.Waste(instance, cut) / instance.ItemArea, "% waste", null, PlateChecker.Faults(instance, cut, new()));
    }

    private static CutColumn Column(PlateColumn column) => new(column.Left, column.Right, [.. column.Rows.Select(r => new CutRow(r.Bottom, r.Top, [.. r.Cells.Select(Cell)]))]);

    private static CutCell Cell(PlateCell cell) => new(cell.Left, cell.Right, [.. cell.Spots.Select(s => new PlacedRect(s.Item, s.Place.X, s.Place.Y, s.Place.W, s.Place.H))]);
}
