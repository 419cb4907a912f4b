using Laydown.Geometry.Shapes;
using Laydown.Instances.Polygons;
using Laydown.Layout.Contours;
using Laydown.Measures;

namespace Laydown.Bench.Layout;

/// <summary>Shapes on equal boards, as few as can be; the pieces of most of these sets fill a known number of boards without any waste.</summary>
internal sealed class IrregularBoardsFamily : ILayoutFamily
{
    public string Name => "irregular-boards";

    public bool Takes(string folder) => Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)).StartsWith("irregular-boards", StringComparison.Ordinal)
        && Directory.EnumerateFiles(folder, "*.txt").Any();

    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
        [.. Directory.EnumerateFiles(folder, "*.txt").Order(StringComparer.Ordinal).Select(f => Task(f, values))];

    private LayoutTask Task(string file, LayoutValues values)
    {
        PolygonInstance instance = PolygonInstance.ReadBoards(file);
        double? best = values.Of(Path.GetFileName(file), "optimal_boards");
        return new(
            Name, "quarter turns", instance.Name, best, "proven optimum (boards full without waste)", LayoutSum.MeanRatio, "1.15 or less at 60 s", null,
            budget => Solve(instance, budget));
    }

    private static LayoutAnswer Solve(PolygonInstance instance, LayoutBudget budget)
    {
        ContourStock board = new("board", Shape.Of(new RectMm(0, 0, instance.Width, instance.Height)), null, 1);
        double bound = Math.Ceiling((instance.ItemArea / (instance.Width * instance.Height)) - 1e-9);
        using var met = CancellationTokenSource.CreateLinkedTokenSource(budget.Stop);
        ContourResult result = ContourLayout.Solve(
            ContourProblem.On([board], 0, ContourBridge.Pieces(instance)), new(Workers: budget.Workers),
            r =>
            {
                // Fewer boards than the bound by area cannot be; the rest of the time would only shorten the last board.
                if (r.IsWhole && r.Sheets.Count <= bound)
                    met.Cancel();
            },
            met.Token);
        return new(result.Sheets.Count, "boards", bound, ContourBridge.Faults(instance, result));
    }
}
