using Laydown.Instances.Rectangles;
using Laydown.Layout.Patterns;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Bench.Layout;

/// <summary>Gang runs: one layout printed until all jobs have their copies; told by the folder's name.</summary>
internal sealed class GangFamily : ILayoutFamily
{
    public string Name => "ganging";

    public bool Takes(string folder) => Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)).Contains("ganging", StringComparison.Ordinal) && Directory.EnumerateFiles(folder, "*.txt").Any();

    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
        [.. Directory.EnumerateFiles(folder, "*.txt").Order(StringComparer.Ordinal).Select(GangInstance.Read).Select(i => Task(i, values))];

    private static LayoutTask Task(RectInstance instance, LayoutValues values) => new(
        "ganging", "one layout, three stages", instance.Name, values.Of(instance.Name, "best_prints"), "none published; the bound is by area", LayoutSum.Mean,
        "-", null, budget => Solve(instance, budget));

    private static LayoutAnswer Solve(RectInstance instance, LayoutBudget budget)
    {
        RectProblem problem = new(
            [new("0", instance.Bins[0].Width, instance.Bins[0].Height, null, 1, [])],
            [.. instance.Items.Select((t, i) => new RectPiece(Invariant($"{i}"), t.Width, t.Height, t.Copies, false))], new(CutProcess.Guillotine, 3));
        RectSheet? sheet = GangSheet.Solve(problem, new(Workers: budget.Workers), null, budget.Stop);
        if (sheet is null)
            return new(double.NaN, "prints", GangSheet.Bound(problem), ["no layout"]);

        FilledBin bin = new(0, sheet.Repeats, [.. sheet.Spots.Select(p => new PlacedRect(p.Piece, p.Place.X, p.Place.Y, p.Place.W, p.Place.H))]);
        return new(sheet.Repeats, "prints", GangSheet.Bound(problem), RectChecker.Faults(instance, [bin], new(false, true, 3, MoreAllowed: true)));
    }
}
