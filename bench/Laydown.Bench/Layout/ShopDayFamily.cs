using System.Diagnostics;
using Laydown.Instances.Rectangles;
using Laydown.Layout.FreePacking;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Bench.Layout;

/// <summary>The shop's normal day: how soon a first drawing stands, and what five seconds waste against a long run.</summary>
/// <remarks>A folder with <c>shop-days.csv</c>: a line for each day with its seed and the waste of a long run, percent of the boards' area.</remarks>
internal sealed class ShopDayFamily : ILayoutFamily
{
    private const string Days = "shop-days.csv";
    private const double Seconds = 5;

    /// <inheritdoc/>
    public string Name => "shop-day";

    /// <inheritdoc/>
    public bool Takes(string folder) => File.Exists(Path.Combine(folder, Days));

    /// <inheritdoc/>
    public IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values)
    {
        IReadOnlyList<TableRow> rows = Table.Read(Path.Combine(folder, Days));
        return
        [
            .. rows.Select(r => new LayoutTask(
                Name, "1000 pieces, first drawing", Seed(r), 0.2, "time wanted", LayoutSum.Mean, "≤ 0.2 s", Seconds, _ => First(r.Number("seed")))),
            .. rows.Select(r => new LayoutTask(
                Name, "1000 pieces, free, waste", Seed(r), r.Value("long_run_waste_percent"), "the same search, long run (see the table's README)",
                LayoutSum.MeanPointsUnder, "≤ +1.5 points", Seconds, b => Day(r.Number("seed"), b))),
        ];
    }

    private static string Seed(TableRow row) => Invariant($"day {row.Number("seed")}");

    // From the pieces in hand to the first layout told.
    private static LayoutAnswer First(int seed)
    {
        RectProblem problem = ShopDay.Of(seed);
        using CancellationTokenSource stop = new();
        double seconds = 0;
        long start = Stopwatch.GetTimestamp();
        RectLayout layout = FreeSearch.Solve(problem, new SearchRules(), _ =>
        {
            seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            stop.Cancel();
        }, stop.Token);
        return new(seconds, "s", null, Faults(problem, layout));
    }

    private static LayoutAnswer Day(int seed, LayoutBudget budget)
    {
        RectProblem problem = ShopDay.Of(seed);
        RectLayout layout = FreeSearch.Solve(problem, new SearchRules(Workers: budget.Workers), null, budget.Stop);
        double boards = layout.Sheets.Sum(s => (double)s.Repeats * problem.Stocks[s.Stock].Area);
        double pieces = layout.Sheets.Sum(s => s.Repeats * s.Spots.Sum(p => (double)p.Place.Area));
        return new(100 * (1 - (pieces / boards)), "% waste", null, Faults(problem, layout));
    }

    // The checker knows one rule of turning for all: pieces that must not turn are looked at here.
    private static IReadOnlyList<string> Faults(RectProblem problem, RectLayout layout) =>
    [
        .. RectChecker.Faults(
            new(
                "day",
                [.. problem.Stocks.Select(s => new RectBin(s.Width, s.Height, s.Copies, s.Cost))],
                [.. problem.Pieces.Select(p => new RectItem(p.Width, p.Height, p.Copies, -1))],
                [],
                new Dictionary<string, string>()),
            FreeBoardsFamily.Filled(layout),
            new(MayTurn: true)),
        .. layout.Sheets.SelectMany(s => s.Spots)
            .Where(s => !problem.Pieces[s.Piece].MayTurn && s.Place.W != problem.Pieces[s.Piece].Width)
            .Select(s => Invariant($"piece {s.Piece} is turned")),
    ];
}
