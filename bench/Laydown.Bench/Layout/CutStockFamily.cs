using Laydown.Instances.Rectangles;
using Laydown.Layout.Patterns;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Bench.Layout;

/// <summary>Cutting stock with demands: pieces wanted many times, two or three stages; told by the folder's name, as the forms are alike.</summary>
internal sealed class CutStockFamily : ILayoutFamily
{
    private const string MostStrip = "max1cut";

    private static readonly Kind[] Kinds =
    [
        new("cintra", "two stages, as they are", 2, false, false, "best_2stage_oriented_area", "best published", "at most +0.1 % in 10 s"),
        new("cintra", "two stages, may turn", 2, false, true, "best_2stage_rotated_area", "best published", "at most +0.1 % in 10 s"),
        new("ATP", "three stages, alvarez", 3, true, false, "best_bins_3stage_vertical_oriented", "best published", "-"),
        new("imahori", "three stages, imahori", 3, true, false, "best_bins_3stage_homogenous_oriented", "best published, equal pieces in a cell of the third stage", "-"),
        new("long2020", "three stages, long", 3, true, false, "best_bins", "best published", "-"),
    ];

    public string Name => "cutstock";

    public bool Takes(string folder) => KindsOf(folder).Any() && RectInstance.NamesIn(folder).Count > 0;

    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
        [.. KindsOf(folder).SelectMany(k => RectInstance.NamesIn(folder).Select(n => Task(RectInstance.Read(folder, n), k, values)))];

    private static IEnumerable<Kind> KindsOf(string folder) => Kinds.Where(k => Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)).Contains(k.Folder, StringComparison.Ordinal));

    private static LayoutTask Task(RectInstance instance, Kind kind, LayoutValues values) => new(
        "cutting stock", kind.Variant, instance.Name, values.Of(instance.Name, kind.Column), kind.BestFrom, LayoutSum.GapOfSums, kind.Wanted, null,
        budget => Solve(instance, kind, budget));

    private static LayoutAnswer Solve(RectInstance instance, Kind kind, LayoutBudget budget)
    {
        bool count = instance.Bins.Count == 1;
        int mostStrip = instance.Parameters.TryGetValue(MostStrip, out string? text) ? int.Parse(text, System.Globalization.CultureInfo.InvariantCulture) : 0;
        RectProblem problem = new(
            [.. instance.Bins.Select((b, i) => new RectStock(Invariant($"{i}"), b.Width, b.Height, b.Copies, count ? 1 : b.Cost, []))],
            [.. instance.Items.Select((t, i) => new RectPiece(Invariant($"{i}"), t.Width, t.Height, t.Copies, kind.MayTurn))],
            new(CutProcess.Guillotine, kind.Stages, kind.Upright, MostStrip: mostStrip));
        (RectLayout layout, double bound) = CutStock.SolveWithBound(problem, new(Workers: budget.Workers), null, budget.Stop);
        IReadOnlyList<FilledBin> bins = [.. layout.Sheets.Select(s => new FilledBin(
            s.Stock, s.Repeats, [.. s.Spots.Select(p => new PlacedRect(p.Piece, p.Place.X, p.Place.Y, p.Place.W, p.Place.H))]))];
        double cost = layout.Sheets.Sum(s => s.Repeats * problem.Stocks[s.Stock].Cost);
        return new(cost, count ? "boards" : "cost", bound, RectChecker.Faults(instance, bins, new(kind.MayTurn, true, kind.Stages, kind.Upright)));
    }

    private sealed record Kind(string Folder, string Variant, int Stages, bool Upright, bool MayTurn, string Column, string BestFrom, string Wanted);
}
