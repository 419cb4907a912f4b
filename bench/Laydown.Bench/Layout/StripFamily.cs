using Laydown.Instances.Rectangles;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Strips;

namespace Laydown.Bench.Layout;

/// <summary>Rectangles on a strip, each instance as it is and with pieces that may turn.</summary>
internal sealed class StripFamily : ILayoutFamily
{
    /// <inheritdoc/>
    public string Name => "strips";

    /// <inheritdoc/>
    public bool Takes(string folder) =>
        Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)).StartsWith("strip", StringComparison.Ordinal) && RectInstance.NamesIn(folder).Count > 0;

    /// <inheritdoc/>
    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values) =>
        [.. from mayTurn in (bool[])[false, true] from name in RectInstance.NamesIn(folder) select Task(RectInstance.Read(folder, name), Set(folder), mayTurn, values)];

    private LayoutTask Task(RectInstance instance, string set, bool mayTurn, LayoutValues values)
    {
        string wanted = (set, mayTurn) switch
        {
            (_, true) => "at most +0.1 %",
            ("C", false) => "at most +0.8 %",
            ("N", false) => "at most +0.2 %",
            _ => "as low as can be",
        };
        return new(
            Name, Invariant($"{set}, {(mayTurn ? "may turn" : "oriented")}"), instance.Name, values.Of(instance.Name, "optimal_height") ?? instance.Bins[0].Height,
            "least length, proven: no waste", LayoutSum.MeanGap, wanted, null, budget => Solve(instance, mayTurn, budget));
    }

    private static LayoutAnswer Solve(RectInstance instance, bool mayTurn, LayoutBudget budget)
    {
        RectBin strip = instance.Bins[0];
        StripProblem problem = new(strip.Width, [.. instance.Items.Select((p, i) => new RectPiece(Invariant($"{i}"), p.Width, p.Height, p.Copies, mayTurn))]);
        StripAnswer answer = StripSearch.Solve(problem, new(Workers: budget.Workers), null, budget.Stop);
        FilledBin filled = new(0, 1, [.. answer.Spots.Select(s => new PlacedRect(s.Piece, s.Place.X, s.Place.Y, s.Place.W, s.Place.H))]);
        return new(answer.Height, "long", answer.Least, RectChecker.Faults(instance with { Bins = [strip with { Height = answer.Height }] }, [filled], new(mayTurn)));
    }

    // The folder's last word, such as C of strip-hopper-turton-C.
    private static string Set(string folder) => Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)).Split('-')[^1];
}
