using Laydown.Instances.Rectangles;
using Laydown.Layout.Guillotine;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Bench.Layout;

/// <summary>The published classes of boards of one size, cut from edge to edge in any number of stages.</summary>
internal sealed class GuillotineBoardsFamily : ILayoutFamily
{
    /// <inheritdoc/>
    public string Name => "boards-guillotine";

    /// <inheritdoc/>
    public bool Takes(string folder) =>
        Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)).StartsWith("2bp", StringComparison.Ordinal) && RectInstance.NamesIn(folder).Count > 0;

    /// <inheritdoc/>
    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
        [.. from mayTurn in new[] { false, true } from name in RectInstance.NamesIn(folder) select Task(folder, name, values, mayTurn)];

    private LayoutTask Task(string folder, string name, LayoutValues values, bool mayTurn) => new(
        Name,
        "guillotine, " + (mayTurn ? "may turn" : "as they lie"),
        name,
        values.Of(name, mayTurn ? "free_rotated" : "free_oriented"),
        "least of the published lists, free cutting",
        LayoutSum.GapOfSums,
        "≤ +0.25 %",
        null,
        budget => Solve(RectInstance.Read(folder, name), mayTurn, budget));

    private static LayoutAnswer Solve(RectInstance instance, bool mayTurn, LayoutBudget budget)
    {
        RectProblem problem = Problem(instance, mayTurn, _ => 1);
        RectLayout layout = GuillotineSearch.Solve(problem, new SearchRules(Workers: budget.Workers), null, budget.Stop);
        IReadOnlyList<string> faults = RectChecker.Faults(instance, Filled(layout), new(mayTurn, Guillotine: true));
        return new(layout.Sheets.Sum(s => s.Repeats), "boards", CutBounds.LeastCost(new(problem, 1)), faults);
    }

    /// <summary>An instance as a problem.</summary>
    internal static RectProblem Problem(RectInstance instance, bool mayTurn, Func<RectBin, double> cost) => new(
        [.. instance.Bins.Select((b, i) => new RectStock(Invariant($"{i}"), b.Width, b.Height, b.Copies, cost(b), []))],
        [.. instance.Items.Select((p, i) => new RectPiece(Invariant($"{i}"), p.Width, p.Height, p.Copies, mayTurn))],
        new(CutProcess.Guillotine));

    /// <summary>A layout as the checker takes it.</summary>
    internal static IReadOnlyList<FilledBin> Filled(RectLayout layout) => [.. layout.Sheets.Select(s =>
        new FilledBin(s.Stock, s.Repeats, [.. s.Spots.Select(p => new PlacedRect(p.Piece, p.Place.X, p.Place.Y, p.Place.W, p.Place.H))]))];
}
