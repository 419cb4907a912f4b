using Laydown.Colour.Curves;

namespace Laydown.Colour.Fits;

/// <summary>Effective coverage of each ink from the patches that carry it alone.</summary>
internal static class Ramps
{
    private const int Steps = 32;

    /// <summary>Curves in a scale of roots: how far each step of a ramp lies on the way from paper to solid.</summary>
    /// <param name="points">All points.</param>
    /// <param name="space">The scale.</param>
    /// <param name="leastLevels">Ramps with fewer levels between paper and solid stay straight.</param>
    internal static IReadOnlyList<CoverageCurve> Curves(FitPoints points, RootSpace space, int leastLevels)
    {
        double[] roots = points.Roots(space);
        return [.. Enumerable.Range(0, points.Inks[0].Length).Select(ink => Curve(points, roots, ink, leastLevels))];
    }

    /// <summary>The curve of a ramp given as roots at levels from 0 to 1.</summary>
    internal static CoverageCurve Curve(IReadOnlyList<double> levels, IReadOnlyList<double[]> roots)
    {
        double[] paper = roots[0], solid = roots[^1];
        double length = 0;
        for (int axis = 0; axis < 3; axis++)
            length += (solid[axis] - paper[axis]) * (solid[axis] - paper[axis]);
        if (!(length > 0))
            return CoverageCurve.Straight;
        return CoverageCurve.Through(levels, [.. roots.Select(r => Along(r, paper, solid) / length)], Steps);
    }

    private static double Along(double[] root, double[] paper, double[] solid)
    {
        double sum = 0;
        for (int axis = 0; axis < 3; axis++)
            sum += (root[axis] - paper[axis]) * (solid[axis] - paper[axis]);
        return sum;
    }

    private static CoverageCurve Curve(FitPoints points, double[] roots, int ink, int leastLevels)
    {
        int[] ramp = [.. Enumerable.Range(0, points.Count)
            .Where(p => points.Inks[p].Index().All(i => i.Index == ink || i.Item == 0)).OrderBy(p => points.Inks[p][ink])];
        bool whole = ramp.Length >= 2 && points.Inks[ramp[0]][ink] == 0 && points.Inks[ramp[^1]][ink] == 1;
        return whole && ramp.Length - 2 >= leastLevels
            ? Curve([.. ramp.Select(p => points.Inks[p][ink])], [.. ramp.Select(p => roots.AsSpan(3 * p, 3).ToArray())])
            : CoverageCurve.Straight;
    }
}
