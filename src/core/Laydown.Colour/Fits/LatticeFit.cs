using Laydown.Colour.Curves;
using Laydown.Colour.Spaces;

namespace Laydown.Colour.Fits;

/// <summary>Fits Neugebauer models, plain and cellular: nodes as measured, nodes that were not printed as the other patches ask.</summary>
/// <remarks>
/// The roots at the nodes enter linearly: those measured stand, the others are found by least squares over all patches, held lightly to
/// what single inks would multiply to, so that a node no patch leans on still has a sound value. n is the one whose residuals are least.
/// </remarks>
internal static class LatticeFit
{
    private static readonly double[] Factors = [1, 1.3, 1.6, 2, 2.5, 3, 4, 6, 10, 30];
    private const double Hold = 1e-3;
    private const double UsualFactor = 2;

    /// <summary>The plain model: nodes at paper and solid.</summary>
    internal static FitGrid Plain(IReadOnlyList<string> inkNames, FitPoints points, CancellationToken cancellation) =>
        Best(inkNames, points, [.. inkNames.Select(_ => new double[] { 0, 1 })], cancellation);

    /// <summary>The cellular model, or null where the chart has no lattice beyond the solids.</summary>
    internal static FitGrid? Cellular(
        IReadOnlyList<string> inkNames, FitPoints points, IReadOnlyList<double[]> levels, CancellationToken cancellation) =>
        levels.All(l => l.Length == 2) ? null : Best(inkNames, points, levels, cancellation);

    private static FitGrid Best(
        IReadOnlyList<string> inkNames, FitPoints points, IReadOnlyList<double[]> levels, CancellationToken cancellation)
    {
        // A chart of nodes alone fits with any factor: then the usual one stands.
        if (Lattice.OnNodes(points, levels).All(on => on))
            return At(inkNames, points, levels, new(UsualFactor), cancellation);

        FitGrid? best = null;
        double least = double.PositiveInfinity;
        foreach (double factor in Factors)
        {
            cancellation.ThrowIfCancellationRequested();
            FitGrid grid = At(inkNames, points, levels, new(factor), cancellation);
            double error = Residuals(grid, points).Average();
            if (best is null || error < least)
                (best, least) = (grid, error);
        }

        return best!;
    }

    /// <summary>ΔE00 of each point against a grid.</summary>
    internal static double[] Residuals(FitGrid grid, FitPoints points)
    {
        GridModel model = new(grid);
        return [.. points.Inks.Zip(points.Colours, (inks, colour) => Ciede2000.Between(colour, model.ToLab(inks)))];
    }

    private static FitGrid At(
        IReadOnlyList<string> inkNames, FitPoints points, IReadOnlyList<double[]> levels, RootSpace space, CancellationToken cancellation)
    {
        IReadOnlyList<CoverageCurve> curves = Ramps.Curves(points, space, levels.Max(l => l.Length) - 1);
        double[][] nodes = [.. levels.Select((axis, ink) => axis.Select(l => l is 0 or 1 ? l : curves[ink].At(l)).ToArray())];
        Lattice lattice = new(levels, nodes, curves);
        float[] roots = lattice.Solve(points, space, Hold, cancellation);
        return new(inkNames, space.YuleNielsen, [.. curves.Select(c => c.Values)], nodes, roots);
    }
}
