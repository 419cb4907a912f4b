using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Fits;

/// <summary>Fits a model of a print to the readings of its chart.</summary>
public static class PrintFit
{
    /// <summary>Most distinct mixtures a fit takes.</summary>
    public const int MostPoints = 6000;

    /// <summary>Fits, and predicts each patch from patches that the model has not seen.</summary>
    /// <param name="file">Name of the readings, for messages.</param>
    /// <param name="readings">Readings of a chart with 1 to 8 inks.</param>
    /// <param name="choices">How to model.</param>
    /// <param name="progress">Told the share done, 0 to 1; may be null.</param>
    /// <param name="cancellation">Stops between steps.</param>
    /// <returns>The fitted print, or why the readings do not carry one.</returns>
    public static Reading<FittedPrint> Fit(
        string file, ReadingSet readings, FitChoices choices, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (FitFaults.Of(file, readings) is { Count: > 0 } faults)
            return Reading.Refused<FittedPrint>(faults);
        FitPoints points = FitPoints.Of(readings);
        if (points.Count > MostPoints)
        {
            return Reading.Refused<FittedPrint>(new InputFault(
                file, null, "mixtures", Invariant($"{points.Count} distinct"), Invariant($"at most {MostPoints}")));
        }

        Kinds kinds = new(readings.InkNames, points, choices.Thorough, cancellation);
        FitKind[] wanted = choices.Kind is { } one ? [one] : Enum.GetValues<FitKind>();
        Held[] tried = [.. wanted.Select((kind, i) => HeldOut(kinds, kind, points, choices, Part(progress, i, wanted.Length))).OfType<Held>()];
        if (tried.Length == 0)
        {
            return Reading.Refused<FittedPrint>(new InputFault(
                file, null, "patches", Invariant($"{points.Count} mixtures without a lattice"), "a chart for which this kind of model can be fitted"));
        }

        // The kind whose held-out patches come out best, fitted to all patches.
        Held best = tried.MinBy(t => t.Errors.Average())!;
        FitGrid kept = kinds.Make(best.Kind, points)!;
        progress?.Report(1);
        return Reading.Of(new FittedPrint(
            readings.InkNames, best.Kind, kept.YuleNielsen, kept,
            ResidualSummary.Of(LatticeFit.Residuals(kept, points)),
            ResidualSummary.Of(best.Errors),
            [.. tried.Select(t => new KindResidual(t.Kind, t.YuleNielsen, ResidualSummary.Of(t.Errors)))],
            [.. best.Which.Index().Select(h => new PatchResidual(
                points.Ids[h.Item], points.Inks[h.Item], points.Colours[h.Item], best.Predicted[h.Index], best.Errors[h.Index]))
                .OrderByDescending(p => p.DeltaE00)]));
    }

    private static Action<double> Part(IProgress<double>? progress, int part, int parts) =>
        share => progress?.Report((part + share) / (parts + 1));

    // Predicts patches from the others; null where the kind has no lattice to stand on.
    private static Held? HeldOut(Kinds kinds, FitKind kind, FitPoints points, FitChoices choices, Action<double> done)
    {
        List<int> which = [];
        List<Lab> predicted = [];
        double factor = 0;
        foreach ((int fold, (int[] seen, int[] held)) in Folds(kinds, kind, points, choices).Index())
        {
            if (kinds.Make(kind, points.Only(seen)) is not { } grid)
                return null;
            GridModel model = new(grid);
            which.AddRange(held);
            predicted.AddRange(held.Select(point => model.ToLab(points.Inks[point])));
            factor = grid.YuleNielsen;
            done((fold + 1.0) / choices.Folds);
        }

        double[] errors = [.. which.Zip(predicted, (point, colour) => Ciede2000.Between(points.Colours[point], colour))];
        return which.Count == 0 ? null : new(kind, factor, which, predicted, errors);
    }

    // A shuffled split, the same for the same seed. Nodes of a cellular model are always seen, as it is made of them, unless
    // there is nothing else.
    private static IEnumerable<(int[] Seen, int[] Held)> Folds(Kinds kinds, FitKind kind, FitPoints points, FitChoices choices)
    {
        int[] order = [.. Enumerable.Range(0, points.Count).Where(p => kind != FitKind.Cellular || !kinds.OnNodes[p] || kinds.OnlyNodes)];
        int[] all = [.. Enumerable.Range(0, points.Count)];
        ulong state = (ulong)choices.Seed;
        for (int i = order.Length - 1; i > 0; i--)
        {
            state = (state * 6364136223846793005UL) + 1442695040888963407UL;
            int other = (int)((state >> 33) % (ulong)(i + 1));
            (order[i], order[other]) = (order[other], order[i]);
        }

        for (int fold = 0; fold < choices.Folds; fold++)
        {
            int part = fold;
            int[] held = [.. order.Where((_, i) => i % choices.Folds == part)];
            if (held.Length > 0)
                yield return ([.. all.Except(held)], held);
        }
    }

    private sealed record Held(FitKind Kind, double YuleNielsen, List<int> Which, List<Lab> Predicted, double[] Errors);

    // How each kind is made; what is searched for once on all points is kept.
    private sealed class Kinds(IReadOnlyList<string> inkNames, FitPoints points, bool thorough, CancellationToken cancellation)
    {
        private readonly Lazy<(InkKernel Kernel, RootSpace Space)> kernel = new(() => KernelSearch.Best(points, thorough, cancellation));
        private readonly Lazy<IReadOnlyList<double[]>> lattice = new(() => Lattice.Find(points));
        private bool[]? onNodes;

        internal bool[] OnNodes => onNodes ??= Lattice.OnNodes(points, lattice.Value);

        internal bool OnlyNodes => !OnNodes.Contains(false);

        internal FitGrid? Make(FitKind kind, FitPoints seen)
        {
            cancellation.ThrowIfCancellationRequested();
            switch (kind)
            {
                case FitKind.Neugebauer:
                    return LatticeFit.Plain(inkNames, seen, cancellation);
                case FitKind.Cellular:
                    return LatticeFit.Cellular(inkNames, seen, lattice.Value, cancellation);
                default:
                    (InkKernel found, RootSpace space) = kernel.Value;
                    return Regression.Fit(found, seen, space, cancellation) is { } fit ? RegressionGrid.Of(inkNames, fit, cancellation) : null;
            }
        }
    }
}
