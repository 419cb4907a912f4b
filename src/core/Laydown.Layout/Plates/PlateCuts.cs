using Laydown.Layout.Search;

namespace Laydown.Layout.Plates;

/// <summary>Panes from plates with defects, cut in the order of their stacks in at most three stages and one more cut a cell, with a rest to keep on the last plate.</summary>
/// <remarks>
/// The problem of [ROADEF2018]. Beams of growing width, after the tree search of [LibralessoFontan2020]: every pass of a worker is one iteration,
/// wider than the pass before. Workers differ in their guide.
/// </remarks>
internal static class PlateCuts
{
    private const double Growth = 1.5;
    private const int FirstWidth = 4;
    private const int LastHope = 10;
    private const int MostWidth = 200_000;

    /// <summary>The cutting of least waste that was found.</summary>
    /// <param name="problem">Plates, panes, rules.</param>
    /// <param name="rules">Passes of each worker and workers; there is no chance in it.</param>
    /// <param name="better">Told of every better one, one call at a time; null for none.</param>
    /// <param name="stop">Ends the search at once; the best so far is given.</param>
    /// <exception cref="ArgumentException">A pane can be cut from no plate without defects, or defects leave no room on a plate for any pane that comes next.</exception>
    internal static PlateLayout Solve(PlateProblem problem, SearchRules rules, Action<PlateLayout>? better, CancellationToken stop)
    {
        Check(problem);
        if (problem.Items.Count == 0)
            return new([], 0);

        PlateBeam[] beams = [.. Enumerable.Range(0, Math.Max(1, rules.Workers)).Select(w => Beam(problem, w))];
        PlateLayout best = new([], long.MaxValue);
        int width = FirstWidth;
        for (long pass = 0; best.Waste == long.MaxValue || (pass <= rules.Iterations && !stop.IsCancellationRequested); pass++)
        {
            PlateStep[]?[] found = new PlateStep[]?[beams.Length];
            long lessThan = best.Waste;
            int wide = width;
            CancellationToken ends = best.Waste == long.MaxValue ? CancellationToken.None : stop;
            Parallel.For(0, beams.Length, new() { MaxDegreeOfParallelism = beams.Length }, b => found[b] = beams[b].Pass(wide, lessThan, ends));
            for (int b = 0; b < beams.Length; b++)
                if (found[b] is PlateStep[] steps && beams[b].Waste < best.Waste)
                {
                    best = new PlateWriter(problem, beams[b].Cutter).Write(steps, beams[b].Waste);
                    better?.Invoke(best);
                }

            if (best.Waste == long.MaxValue && pass == LastHope)
                throw new ArgumentException("Plates: found defects that leave no room for the panes that come next; wanted plates that hold them.", nameof(problem));
            if (wide == MostWidth || (best.Waste < long.MaxValue && beams.Any(b => b.Whole) && !stop.IsCancellationRequested))
                break;
            width = (int)Math.Min(MostWidth, Math.Ceiling(width * Growth));
        }

        return best;
    }

    private static void Check(PlateProblem problem)
    {
        PlateCutter cutter = new(problem with { Defects = [] });
        foreach (PlateItem pane in problem.Items)
            if (!cutter.Cut(PlateCutter.Start, PlateWhere.NewPlate, pane.Width, pane.Height, 0, false, out _, out _)
                && !cutter.Cut(PlateCutter.Start, PlateWhere.NewPlate, pane.Height, pane.Width, 0, false, out _, out _))
                throw new ArgumentException(
                    Invariant($"Pane {pane.Id}: found {pane.Width} x {pane.Height}; wanted one that can be cut from {problem.Width} x {problem.Height}."), nameof(problem));
    }

    private static PlateBeam Beam(PlateProblem problem, int worker) => worker % 2 == 0 ? new(problem, 0, 1) : new(problem, 0.1, 1);
}
