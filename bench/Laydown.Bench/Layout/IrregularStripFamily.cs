using Laydown.Instances.Polygons;
using Laydown.Layout.Contours;

namespace Laydown.Bench.Layout;

/// <summary>Shapes on a strip of fixed width: share of the used strip that is covered.</summary>
internal sealed class IrregularStripFamily : ILayoutFamily
{
    public string Name => "irregular-strip";

    public bool Takes(string folder) => Directory.EnumerateFiles(folder, "*.json").Take(1).Any(f => File.ReadAllText(f).Contains("\"strip_height\"", StringComparison.Ordinal));

    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
        [.. Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal).Select(f => Task(PolygonInstance.ReadStrip(f), values)).OrderBy(t => t.Variant)];

    private LayoutTask Task(PolygonInstance instance, LayoutValues values)
    {
        double? mean = values.Of(instance.Name, "mean_density_pct"), record = values.Of(instance.Name, "record_density_pct");
        (string variant, double? best, string from, string wanted) = (mean, record) switch
        {
            (not null, _) => ("classic sets", mean, "mean density of 100 published runs of 1200 s", "-0.8 points or better at 120 s"),
            (null, not null) => ("newer sets", record, "published record density", "-2 points or better at 300 s"),
            _ => ("any angle", null, "none published", "reported"),
        };
        return new(Name, variant, instance.Name, best, from, LayoutSum.MeanPointsOver, wanted, null, budget => Solve(instance, budget));
    }

    private static LayoutAnswer Solve(PolygonInstance instance, LayoutBudget budget)
    {
        ContourProblem problem = ContourProblem.On(new ContourStrip(instance.Width), 0, ContourBridge.Pieces(instance));
        ContourResult result = ContourLayout.Solve(problem, new(Workers: budget.Workers), null, budget.Stop);
        return new(100 * instance.ItemArea / (instance.Width * result.LengthMm), "%", null, ContourBridge.Faults(instance, result));
    }
}
