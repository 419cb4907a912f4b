using System.Globalization;
using Laydown.Instances.Rectangles;
using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Bench.Layout;

/// <summary>Sheets side by side on belts of the project's own generator, beside what trying everything gives.</summary>
internal sealed class LaneFamily : ILayoutFamily
{
    private const string FileName = "lanes.csv";

    /// <inheritdoc/>
    public string Name => "lanes";

    /// <inheritdoc/>
    public bool Takes(string folder) => File.Exists(Path.Combine(folder, FileName));

    /// <inheritdoc/>
    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) => [.. Table.Read(Path.Combine(folder, FileName)).Select(r => new LayoutTask(
        Name, "different and equal sheets", r.Text("case") ?? "", r.Value("uncovered"), "trying everything", LayoutSum.MeanPointsUnder, "equal to trying everything", null, _ => Solve(r)))];

    private static LayoutAnswer Solve(TableRow row)
    {
        Belt belt = BeltOf(row);
        IReadOnlyList<LaneBlank> blanks = [.. Numbers(row, "widths").Select((w, i) => new LaneBlank(Invariant($"b{i}"), new(w, 400), 1))];
        Reading<BeltPlace> place = LanePlan.Solve(row.Text("case") ?? "", blanks, row.Number("anyOrder") == 1, belt);
        if (!place.IsTaken)
            return new(0, "mm", null, row.Text("uncovered") is null ? [] : ["no place found where there is one"]);
        if (row.Text("uncovered") is null)
            return new(0, "mm", null, ["a place found where there is none"]);

        double reach = place.Value.Lanes.Sum(l => belt.Side is LoadSide.Far ? belt.WidthMm - l.StartMm - l.WidthMm : l.StartMm);
        bool equal = Math.Abs(place.Value.UncoveredMm - row.Number("uncovered")) < 1e-6 && place.Value.OpenZones.Count == row.Number("open") && Math.Abs(reach - row.Number("reach")) < 1e-6;
        return new(place.Value.UncoveredMm, "mm", null, equal ? [] : ["another place than the best of all"]);
    }

    private static Belt BeltOf(TableRow row) => new(
        row.Number("beltWidth"),
        3000,
        [.. (row.Text("zones") ?? "").Split(' ').Select(z => z.Split('+')).Select((z, i) => new BeltZone(Invariant($"Z{i}"), Number(z[0]), Number(z[1])))],
        Numbers(row, "lays"),
        Numbers(row, "widths").Count,
        row.Number("gap"),
        row.Number("holdPercent"),
        row.Number("unheldStrip"),
        Enum.Parse<LoadSide>(row.Text("side") ?? ""),
        row.Text("pins") is null ? null : Numbers(row, "pins"));

    private static IReadOnlyList<double> Numbers(TableRow row, string column) => [.. (row.Text(column) ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number)];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
