using Laydown.Instances.Rectangles;
using Laydown.Layout.Guillotine;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Bench.Layout;

/// <summary>Boards of several sizes, some few of each, cut from edge to edge, pieces as they lie: share of the boards' area under pieces.</summary>
/// <remarks>Least area of boards is what the published figures are about; prices in the files are not looked at.</remarks>
internal sealed class SeveralSizesFamily : ILayoutFamily
{
    private static readonly IReadOnlyDictionary<string, string> Wanted = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["2dvsbpp-pisinger-sigurd"] = "≥ 90.5 %",
        ["multibin-hopper-turton-M"] = "≥ 97.8 %",
        ["multisize-ortmann"] = "≥ 95 %",
    };

    /// <inheritdoc/>
    public string Name => "several-sizes";

    /// <inheritdoc/>
    public bool Takes(string folder) => FolderName(folder) is var name
        && (name.StartsWith("2dvsbpp", StringComparison.Ordinal) || name.StartsWith("multi", StringComparison.Ordinal)) && RectInstance.NamesIn(folder).Count > 0;

    /// <inheritdoc/>
    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
    [
        .. RectInstance.NamesIn(folder).Select(name => new LayoutTask(
            Name, FolderName(folder), name, values.OfClass(ClassOf(name), "GDRR_600s_8threads_util_pct"), "mean of the instance's class [GardeynWauters2022], 600 s on 8 threads",
            LayoutSum.Mean, Wanted.GetValueOrDefault(FolderName(folder), "-"), null, budget => Solve(RectInstance.Read(folder, name), budget))),
    ];

    private static string FolderName(string folder) => Path.GetFileName(Path.TrimEndingDirectorySeparator(folder));

    // MB_C10_3: C10; Nice25i2b1: Nice25i; M1a: M1.
    private static string ClassOf(string name) =>
        name.StartsWith("MB_", StringComparison.Ordinal) ? name.Split('_')[1] : name.IndexOf('i', 4 < name.Length ? 4 : 0) is > 0 and var end ? name[..(end + 1)] : name[..2];

    private static LayoutAnswer Solve(RectInstance instance, LayoutBudget budget)
    {
        RectProblem problem = GuillotineBoardsFamily.Problem(instance, false, b => b.Area);
        RectLayout layout = GuillotineSearch.Solve(problem, new SearchRules(Workers: budget.Workers), null, budget.Stop);
        IReadOnlyList<string> faults = RectChecker.Faults(instance, GuillotineBoardsFamily.Filled(layout), new(false, Guillotine: true));
        double Used(double boards) => 100.0 * instance.ItemArea / boards;
        return new(Used(layout.Sheets.Sum(s => s.Repeats * instance.Bins[s.Stock].Area)), "% used", Used(CutBounds.LeastCost(new(problem, 1))), faults);
    }
}
