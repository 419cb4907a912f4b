using Laydown.Instances.Panels;
using Laydown.Instances.Rectangles;
using Laydown.Layout.Panels;

namespace Laydown.Bench.Layout;

/// <summary>Axes to be parted in panels, made from seeds; the best values are computed by programs that share nothing with the solver.</summary>
internal sealed class PanelFamily : ILayoutFamily
{
    private const string Seeds = "panel-seeds.csv";
    private const double PerPanel = 1e9;
    private static readonly PanelWidths[] Kinds = [PanelWidths.Equal, PanelWidths.Free, PanelWidths.FullAndRest, PanelWidths.Given];

    /// <inheritdoc/>
    public string Name => "panels";

    /// <inheritdoc/>
    public bool Takes(string folder) => File.Exists(Path.Combine(folder, Seeds));

    /// <inheritdoc/>
    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
        [.. Table.Read(Path.Combine(folder, Seeds)).Select(r => Task(r.Text("kind") ?? "", r.Number("seed"))).OfType<LayoutTask>()];

    // Axes that cannot be parted are left out: there is nothing to be compared.
    private static LayoutTask? Task(string kind, int seed)
    {
        bool small = kind == "small";
        PanelInstance axis = small ? PanelGenerator.Small(seed) : PanelGenerator.Large(seed);
        (int Count, long Cost, long Spread)? best = small
            ? PanelBrute.Best(axis) is { } b ? (b.Starts.Count, b.Cost, b.Spread) : null
            : PanelTable.Best(axis, 40);
        return best is not { } known ? null : new LayoutTask(
            "panels", small ? "small, against trying all" : "as long as a shop has them, against a plain table", Invariant($"{kind}-{seed}"),
            (known.Count * PerPanel) + known.Cost, "computed in the project", LayoutSum.GapOfSums, "equal on all; 0.05 s", null,
            _ => Answer(axis, known.Spread));
    }

    private static LayoutAnswer Answer(PanelInstance axis, long bestSpread)
    {
        bool[] near = new bool[(2 * axis.Length) + 1];
        for (int twice = 0; twice < near.Length; twice++)
            near[twice] = axis.Wanted.Any(w => Math.Abs(twice - (2 * w)) <= 2 * axis.Slack);
        SeamProfile seams = new([.. axis.Cost], axis.Wanted.Count == 0 ? null : near, axis.OnlyWanted, axis.Elsewhere);
        AxisAnswer? found = AxisSplit.Solve(new(axis.Length, axis.Most, axis.Least, axis.OverlapLeast, axis.OverlapMost, Kinds[axis.Kind], axis.Given), seams);
        if (found is null)
            return new(0, "panels × 10⁹ + cost", null, ["no panels found"]);
        PanelAnswer answer = new(found.Starts, found.Ends, found.Cost, found.Spread);
        IReadOnlyList<string> faults = PanelChecker.Faults(axis, answer);
        return new(
            (found.Count * PerPanel) + found.Cost, "panels × 10⁹ + cost", null,
            faults.Count == 0 && found.Spread != bestSpread ? [Invariant($"spread {found.Spread}, best {bestSpread}")] : faults);
    }
}
