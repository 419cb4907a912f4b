using Laydown.Instances.Rectangles;
using Laydown.Layout.FreePacking;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Bench.Layout;

/// <summary>The published classes of boards of one size, cut free: the whole time, and a first answer in a tenth of a second.</summary>
internal sealed class FreeBoardsFamily : ILayoutFamily
{
    private const double FirstSeconds = 0.1;

    /// <inheritdoc/>
    public string Name => "boards-free";

    /// <inheritdoc/>
    public bool Takes(string folder) =>
        Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)).StartsWith("2bp", StringComparison.Ordinal) && RectInstance.NamesIn(folder).Count > 0;

    /// <inheritdoc/>
    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
    [
        .. from first in new[] { false, true }
           from mayTurn in new[] { false, true }
           from name in RectInstance.NamesIn(folder)
           select Task(folder, name, values, mayTurn, first),
    ];

    private LayoutTask Task(string folder, string name, LayoutValues values, bool mayTurn, bool first) => new(
        Name,
        (first ? "first answer, free, " : "free, ") + (mayTurn ? "may turn" : "as they lie"),
        name,
        values.Of(name, mayTurn ? "free_rotated" : "free_oriented"),
        "least of the published lists, free cutting",
        LayoutSum.GapOfSums,
        first ? "≤ +1.0 %" : "≤ +0.3 %",
        first ? FirstSeconds : null,
        budget => Solve(RectInstance.Read(folder, name), mayTurn, budget));

    private static LayoutAnswer Solve(RectInstance instance, bool mayTurn, LayoutBudget budget)
    {
        RectProblem problem = Problem(instance, mayTurn);
        RectLayout layout = FreeSearch.Solve(problem, new SearchRules(Workers: budget.Workers), null, budget.Stop);
        IReadOnlyList<string> faults = RectChecker.Faults(instance, Filled(layout), new(mayTurn));
        double cost = problem.Stocks[0].Cost;
        return new(layout.Sheets.Sum(s => s.Repeats), "boards", FreeBounds.Cost(new(problem)) / cost, faults);
    }

    private static RectProblem Problem(RectInstance instance, bool mayTurn) => new(
        [.. instance.Bins.Select((b, i) => new RectStock(Invariant($"{i}"), b.Width, b.Height, b.Copies, 1, []))],
        [.. instance.Items.Select((p, i) => new RectPiece(Invariant($"{i}"), p.Width, p.Height, p.Copies, mayTurn))],
        new(CutProcess.Free));

    /// <summary>A layout as the checker takes it.</summary>
    internal static IReadOnlyList<FilledBin> Filled(RectLayout layout) => [.. layout.Sheets.Select(s =>
        new FilledBin(s.Stock, s.Repeats, [.. s.Spots.Select(p => new PlacedRect(p.Piece, p.Place.X, p.Place.Y, p.Place.W, p.Place.H))]))];
}
