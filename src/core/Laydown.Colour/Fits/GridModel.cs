using System.Runtime.Intrinsics;
using Laydown.Colour.Curves;
using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Fits;

/// <summary>A fitted model at work: inks → colour with slopes, by its grid.</summary>
public sealed class GridModel : IInkModel
{
    private const int Padded = 4;
    private readonly CoverageCurve[] curves;
    private readonly double[][] nodes;
    private readonly int[] strides;
    private readonly float[] roots;
    private readonly RootSpace space;

    /// <summary>A model from its grid.</summary>
    /// <exception cref="ArgumentException">The parts of the grid do not fit together.</exception>
    public GridModel(FitGrid grid)
    {
        Bounds.Within(grid.YuleNielsen, 1, 100);
        Inks = Bounds.Within(grid.InkNames.Count, 1, 8);
        if (grid.Curves.Count != Inks || grid.Nodes.Count != Inks || grid.Nodes.Any(n => n.Count < 2 || n[0] != 0 || n[^1] != 1))
            throw new ArgumentException("Grid: wanted one curve and at least two nodes from 0 to 1 for each ink.", nameof(grid));
        if (grid.Nodes.Any(n => n.Zip(n.Skip(1)).Any(p => !(p.Second > p.First))))
            throw new ArgumentException("Grid: wanted nodes that rise.", nameof(grid));
        int count = grid.Nodes.Aggregate(1, (n, axis) => checked(n * axis.Count));
        if (grid.Roots.Length != 3 * count || grid.Roots.Any(r => !float.IsFinite(r)))
            throw new ArgumentException(Invariant($"Grid of {count} nodes: found {grid.Roots.Length} numbers; wanted {3 * count}."), nameof(grid));

        Grid = grid;
        space = new(grid.YuleNielsen);
        curves = [.. grid.Curves.Select(c => new CoverageCurve(c))];
        nodes = [.. grid.Nodes.Select(n => n.ToArray())];
        strides = new int[Inks];
        for (int ink = Inks - 1, stride = Padded; ink >= 0; ink--)
        {
            strides[ink] = stride;
            stride *= nodes[ink].Length;
        }

        // Four numbers a node, so that one load brings all three roots.
        roots = new float[Padded * count];
        for (int node = 0; node < count; node++)
            grid.Roots.AsSpan(3 * node, 3).CopyTo(roots.AsSpan(Padded * node));
        White = ToXyz(new double[Inks]);
    }

    /// <summary>The numbers behind it.</summary>
    public FitGrid Grid { get; }

    /// <inheritdoc/>
    public int Inks { get; }

    /// <inheritdoc/>
    public Xyz White { get; }

    /// <summary>Colour under D50 against the perfect diffuser, as instruments report it.</summary>
    public Lab ToLab(ReadOnlySpan<double> coverages) => Lab.From(ToXyz(coverages), WhitePoints.Pcs);

    /// <inheritdoc/>
    public Xyz ToXyz(ReadOnlySpan<double> coverages)
    {
        Span<double> place = stackalloc double[8], steep = stackalloc double[8], share = stackalloc double[256], root = stackalloc double[4];
        int corner = Locate(coverages, place, steep);
        Demichel.Shares(place[..Inks], share[..(1 << Inks)]);
        Vector256<double> sum = default;
        for (int j = 0; j < 1 << Inks; j++)
            sum += Corner(corner, j) * share[j];
        sum.CopyTo(root);
        return space.Colour(root);
    }

    /// <inheritdoc/>
    public Xyz ToXyz(ReadOnlySpan<double> coverages, Span<Xyz> slopes)
    {
        if (slopes.Length != Inks)
            throw new ArgumentException(Invariant($"{slopes.Length} slopes: wanted {Inks}."), nameof(slopes));
        int corners = 1 << Inks;
        Span<double> place = stackalloc double[8], steep = stackalloc double[8], root = stackalloc double[4], slope = stackalloc double[4];
        Span<Vector256<double>> value = stackalloc Vector256<double>[256], rise = stackalloc Vector256<double>[256];
        int corner = Locate(coverages, place, steep);
        for (int j = 0; j < corners; j++)
            value[j] = Corner(corner, j);

        // Halve the cell ink by ink from the last to the first; keep for each ink the rise along it, halved further by the inks before it.
        Span<Vector256<double>> rises = stackalloc Vector256<double>[8];
        for (int ink = Inks - 1; ink >= 0; ink--)
        {
            int half = 1 << ink;
            for (int j = 0; j < half; j++)
            {
                rise[j] = value[j + half] - value[j];
                value[j] += rise[j] * place[ink];
            }

            for (int inner = ink - 1, left = half; inner >= 0; inner--)
            {
                left /= 2;
                for (int j = 0; j < left; j++)
                    rise[j] += (rise[j + left] - rise[j]) * place[inner];
            }

            rises[ink] = rise[0];
        }

        value[0].CopyTo(root);
        Xyz white = WhitePoints.Pcs, outer = new(
            white.X * space.Steepness(root[0]), white.Y * space.Steepness(root[1]), white.Z * space.Steepness(root[2]));
        for (int ink = 0; ink < Inks; ink++)
        {
            (rises[ink] * steep[ink]).CopyTo(slope);
            slopes[ink] = new(outer.X * slope[0], outer.Y * slope[1], outer.Z * slope[2]);
        }

        return space.Colour(root);
    }

    // Bit i of j stands for ink i; its upper corner lies one stride further.
    private Vector256<double> Corner(int corner, int j)
    {
        for (int ink = 0; ink < Inks; ink++)
            corner += ((j >> ink) & 1) * strides[ink];
        Vector128<float> four = Vector128.LoadUnsafe(ref roots[corner]);
        (Vector128<double> low, Vector128<double> high) = Vector128.Widen(four);
        return Vector256.Create(low, high);
    }

    // The cell: its lowest corner, the place inside it from 0 to 1, and how fast that moves with ink.
    private int Locate(ReadOnlySpan<double> coverages, Span<double> place, Span<double> steep)
    {
        if (coverages.Length != Inks)
            throw new ArgumentException(Invariant($"{coverages.Length} coverages: wanted {Inks}."), nameof(coverages));
        int corner = 0;
        for (int ink = 0; ink < Inks; ink++)
        {
            double covered = curves[ink].At(coverages[ink], out double slope);
            double[] axis = nodes[ink];
            int cell = 0;
            while (cell < axis.Length - 2 && axis[cell + 1] <= covered)
                cell++;
            double width = axis[cell + 1] - axis[cell];
            (place[ink], steep[ink]) = ((covered - axis[cell]) / width, slope / width);
            corner += cell * strides[ink];
        }

        return corner;
    }
}
