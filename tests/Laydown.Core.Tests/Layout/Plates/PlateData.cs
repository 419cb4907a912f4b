using Laydown.Core.Tests.Layout.Patterns;
using Laydown.Instances.Plates;
using Laydown.Instances.Rectangles;
using Laydown.Layout.Packing;
using Laydown.Layout.Plates;

namespace Laydown.Core.Tests.Layout.Plates;

/// <summary>Problems of plates and what their judge takes.</summary>
internal static class PlateData
{
    public static RectInstance Published(string name) => RectInstance.Read(StockData.Folder("plates"), name);

    public static double PublishedWaste(string name) =>
        Table.Read(Path.Combine(StockData.Folder("plates"), "values.csv")).Single(r => r.Text("instance") == name).Value("best_waste")!.Value;

    public static PlateProblem Problem(RectInstance instance) => new(
        instance.Bins[0].Width, instance.Bins[0].Height,
        [.. instance.Bins.Select((_, i) => (IReadOnlyList<Box>)[.. instance.Defects.Where(d => d.Bin == i).Select(d => new Box(d.X, d.Y, d.Width, d.Height))])],
        [.. instance.Items.Select((t, i) => new PlateItem(Invariant($"{i}"), t.Width, t.Height, t.Stack))], new(100, 3500, 100, 20));

    /// <summary>Plates of the published size with many large defects, so that every rule about them comes up.</summary>
    public static RectInstance Random(int seed)
    {
        Chance chance = new(seed);
        return new(
            Invariant($"random {seed}"), [.. Enumerable.Repeat(new RectBin(6000, 3210, null, 1), 30)],
            [.. Enumerable.Range(0, 25).Select(_ => new RectItem(120 + (20 * chance.Below(60)), 120 + (20 * chance.Below(90)), 1, chance.Below(4)))],
            [.. Enumerable.Range(0, 240).Select(i => new RectDefect(i / 8, chance.Below(5900), chance.Below(3100), 2 + chance.Below(60), 2 + chance.Below(60)))],
            new Dictionary<string, string>());
    }

    public static IReadOnlyList<IReadOnlyList<CutColumn>> Cut(PlateLayout layout) => [.. layout.Plates.Select(p => (IReadOnlyList<CutColumn>)[.. p.Select(Column)])];

    private static CutColumn Column(PlateColumn column) => new(column.Left, column.Right, [.. column.Rows.Select(r => new CutRow(r.Bottom, r.Top, [.. r.Cells.Select(Cell)]))]);

    private static CutCell Cell(PlateCell cell) => new(cell.Left, cell.Right, [.. cell.Spots.Select(s => new PlacedRect(s.Item, s.Place.X, s.Place.Y, s.Place.W, s.Place.H))]);
}
