using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Layout.Guillotine;

/// <summary>Very many pieces: the sheets of a first filling are worked over a window of them at a time, the emptiest first, each without regard to the others.</summary>
/// <remarks>A step of the whole search copies all trees of cuts: with a hundred thousand pieces hardly any would be made (from memory).</remarks>
internal sealed class CutWindows
{
    /// <summary>So many pieces at most are searched as one.</summary>
    private const int MostPieces = 20_000;

    /// <summary>A window takes sheets until they carry so many pieces; then so many steps are made in it.</summary>
    private const int WindowPieces = 3000, WindowSteps = 30_000;

    /// <summary>Rounds between two answers told: to write a large layout takes long itself.</summary>
    private const int TellEach = 8;

    private readonly RectProblem problem;
    private readonly SearchRules rules;
    private readonly CancellationToken stop;
    private readonly Action<RectLayout>? better;
    private readonly IReadOnlyList<int> missing;
    private readonly int[] free;
    private readonly List<RectSheet> sheets;
    private long left, tried;
    private bool gained;

    private CutWindows(RectProblem problem, RectLayout first, SearchRules rules, Action<RectLayout>? better, CancellationToken stop)
    {
        (this.problem, this.rules, this.better, this.stop, missing, left) = (problem, rules, better, stop, first.Missing, rules.Iterations);
        sheets = [.. first.Sheets.SelectMany(s => Enumerable.Repeat(s with { Repeats = 1 }, s.Repeats))];
        free = [.. problem.Stocks.Select((s, i) => s.Copies is int n ? n - sheets.Count(sheet => sheet.Stock == i) : 0)];
    }

    /// <summary>Whether a problem has too many pieces to be searched as one; groups are kept together only in a whole search.</summary>
    internal static bool Wanted(RectProblem problem) => problem.Pieces.Sum(p => (long)p.Copies) > MostPieces && problem.Pieces.All(p => p.Group < 0);

    /// <summary>The best found; null where a piece found no place in the first filling although some sheet takes it.</summary>
    internal static RectLayout? Best(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop)
    {
        CutJob job = new(problem, rules.Seed);
        CutWalk walk = new(job, rules.Seed);
        walk.Start();
        if (walk.Best.MissingCount > 0)
            return null;

        RectLayout first = CutWriter.Write(walk.Best, job);
        better?.Invoke(first);
        return new CutWindows(problem, first, rules, better, stop).Best(job.LeastCost, job.Costs) ?? first;
    }

    private RectLayout? Best(long leastCost, IReadOnlyList<long> costs)
    {
        while (left > 0 && !stop.IsCancellationRequested && sheets.Sum(s => costs[s.Stock]) > leastCost)
        {
            Pass();
            Tell();
        }

        return tried > 0 ? new(CutWriter.Merged(sheets), missing) : null;
    }

    // All sheets once, by windows of sheets that are about equally full.
    private void Pass()
    {
        sheets.Sort((a, b) => Fill(a).CompareTo(Fill(b)));
        IReadOnlyList<IReadOnlyList<RectSheet>> windows = Windows();
        List<RectSheet> after = [];
        int workers = Math.Max(1, rules.Workers), done = 0;
        for (int round = 0; done < windows.Count && left > 0 && !stop.IsCancellationRequested; round++)
        {
            IReadOnlyList<RectSheet>[] now = [.. windows.Skip(done).Take(workers)];
            RectLayout?[] found = new RectLayout?[now.Length];
            long steps = Math.Min(WindowSteps, left);
            Parallel.For(0, now.Length, new ParallelOptions { MaxDegreeOfParallelism = workers }, i => found[i] = Tried(now[i], i == 0, steps, tried + i));
            for (int i = 0; i < now.Length; i++)
                after.AddRange(Kept(now[i], found[i]));
            (left, tried, done) = (left - steps, tried + now.Length, done + now.Length);
            if (round % TellEach == TellEach - 1)
                Tell([.. after, .. windows.Skip(done).SelectMany(w => w)]);
        }

        after.AddRange(windows.Skip(done).SelectMany(w => w));
        sheets.Clear();
        sheets.AddRange(after);
    }

    private IReadOnlyList<IReadOnlyList<RectSheet>> Windows()
    {
        List<IReadOnlyList<RectSheet>> windows = [];
        List<RectSheet> one = [];
        int pieces = 0;
        foreach (RectSheet sheet in sheets)
        {
            one.Add(sheet);
            if ((pieces += sheet.Spots.Count) < WindowPieces)
                continue;

            windows.Add(one);
            (one, pieces) = ([], 0);
        }

        if (one.Count > 0)
            windows.Add(one);
        return windows;
    }

    // The pieces of a window laid out for less; null where that was not found. One window of a round alone may take from what is left of the stocks.
    private RectLayout? Tried(IReadOnlyList<RectSheet> window, bool mayTake, long steps, long number)
    {
        Dictionary<int, int> copies = window.SelectMany(s => s.Spots).GroupBy(s => s.Piece).ToDictionary(g => g.Key, g => g.Count());
        int[] pieces = [.. copies.Keys.Order()];
        RectProblem own = problem with
        {
            Stocks = [.. problem.Stocks.Select((s, i) => s.Copies is null ? s : s with { Copies = window.Count(sheet => sheet.Stock == i) + (mayTake ? free[i] : 0) })],
            Pieces = [.. pieces.Select(p => problem.Pieces[p] with { Copies = copies[p] })],
        };
        CutJob job = new(own, rules.Seed);
        long cost = window.Sum(s => job.Costs[s.Stock]);
        if (cost <= job.LeastCost)
            return null;

        CutWalk walk = new(job, rules.Seed + (number * 7919L));
        walk.Start();
        walk.Go(cost - 1, steps, stop);
        if (walk.Best.MissingCount > 0 || walk.Best.Cost >= cost)
            return null;

        RectLayout found = CutWriter.Write(walk.Best, job);
        return found with { Sheets = [.. found.Sheets.Select(s => s with { Spots = [.. s.Spots.Select(p => p with { Piece = pieces[p.Piece] })] })] };
    }

    private IEnumerable<RectSheet> Kept(IReadOnlyList<RectSheet> window, RectLayout? found)
    {
        if (found is null || found.Sheets.Sum(Worth) >= window.Sum(Worth))
            return window;

        gained = true;
        RectSheet[] alone = [.. found.Sheets.SelectMany(s => Enumerable.Repeat(s with { Repeats = 1 }, s.Repeats))];
        foreach (int s in Enumerable.Range(0, free.Length).Where(s => problem.Stocks[s].Copies is not null))
            free[s] += window.Count(sheet => sheet.Stock == s) - alone.Count(sheet => sheet.Stock == s);
        return alone;
    }

    private void Tell() => Tell(sheets);

    private void Tell(IReadOnlyList<RectSheet> now)
    {
        if (gained)
            better?.Invoke(new(CutWriter.Merged(now), missing));
        gained = false;
    }

    private double Fill(RectSheet sheet) => (double)sheet.Spots.Sum(p => p.Place.Area) / problem.Stocks[sheet.Stock].Area;

    // What sheets cost less what their largest offcut is worth.
    private double Worth(RectSheet sheet)
    {
        RectStock stock = problem.Stocks[sheet.Stock];
        return sheet.Repeats * stock.Cost * (1 - (problem.Rules.OffcutWorth * sheet.Offcuts.Select(o => o.Area).FirstOrDefault() / stock.Area));
    }
}
