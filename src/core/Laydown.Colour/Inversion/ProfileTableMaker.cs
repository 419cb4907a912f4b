using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Inversion;

/// <summary>Makes the tables of an output profile from a four-ink model.</summary>
public static class ProfileTableMaker
{
    // Starts for colours that the neighbours' inks do not lead to: the corners of the hue circle, black, and middle grey.
    private static readonly double[] FarStarts =
    [
        0.8, 0.1, 0.1, 0, 0.1, 0.8, 0.1, 0, 0.1, 0.1, 0.8, 0, 0.8, 0.8, 0.1, 0, 0.1, 0.8, 0.8, 0, 0.8, 0.1, 0.8, 0, 0.3, 0.3, 0.3, 0.8, 0.3, 0.3, 0.3, 0.1,
    ];

    /// <summary>Fills all tables.</summary>
    /// <param name="model">Model of the print under D50, four inks.</param>
    /// <param name="limits">Ink limits; every node of the inverse tables keeps them.</param>
    /// <param name="policy">Wish for black.</param>
    /// <param name="forwardSteps">Nodes along each ink, 2 to 33.</param>
    /// <param name="inverseSteps">Nodes along L*, a*, b*: odd, 3 to 65, so that the neutral axis lies on nodes.</param>
    /// <param name="cancellation">Stops the work between rows of nodes.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of nodes lies outside its range.</exception>
    public static ProfileTables Make(
        NeugebauerModel model, InkLimits limits, BlackPolicy policy, int forwardSteps, int inverseSteps, CancellationToken cancellation)
    {
        Bounds.Within(forwardSteps, 2, 33);
        Bounds.Within(inverseSteps, 3, 65);
        InkInverse inverse = new(model, limits, policy);
        Lab black = DarkestNeutral(inverse);
        Grid colorimetric = Fill(inverse, inverseSteps, static colour => colour, null, cancellation);
        Grid perceptual = Fill(inverse, inverseSteps, colour => FitLightness(colour, black.L), colorimetric, cancellation);
        return new(
            model.White, InkInverse.Inks, forwardSteps, Forward(model, forwardSteps, cancellation),
            inverseSteps, colorimetric.Inks, perceptual.Inks, colorimetric.Distance);
    }

    /// <summary>The darkest neutral that the limits allow, media-relative.</summary>
    public static Lab DarkestNeutral(InkInverse inverse)
    {
        double[] inks = [0.5, 0.5, 0.5, 1];
        inverse.Solve(default, inks);
        return inverse.Predict(inks);
    }

    /// <summary>Black point compensation: linear in tristimulus values, white stays, L* 0 becomes the print's darkest.</summary>
    internal static Lab FitLightness(Lab colour, double blackL)
    {
        Xyz white = WhitePoints.Pcs;
        Xyz black = new Lab(blackL, 0, 0).ToXyz(white);
        double scale = 1 - (black.Y / white.Y);
        return Lab.From(colour.ToXyz(white).Times(scale).Plus(black), white);
    }

    private static Lab[] Forward(NeugebauerModel model, int steps, CancellationToken cancellation)
    {
        Lab[] table = new Lab[steps * steps * steps * steps];
        Span<double> inks = stackalloc double[InkInverse.Inks];
        for (int node = 0; node < table.Length; node++)
        {
            if (node % (steps * steps) == 0)
                cancellation.ThrowIfCancellationRequested();
            for (int ink = InkInverse.Inks - 1, rest = node; ink >= 0; ink--, rest /= steps)
                inks[ink] = (rest % steps) / (double)(steps - 1);
            table[node] = Lab.From(model.ToXyz(inks), model.White);
        }

        return table;
    }

    private static Grid Fill(InkInverse inverse, int steps, Func<Lab, Lab> map, Grid? like, CancellationToken cancellation)
    {
        Grid grid = new(steps);

        // From white downward, and outward from the neutral axis, so that every node has a neighbour already solved nearer to the gamut.
        int middle = (steps - 1) / 2;
        int[] outward = [.. Enumerable.Range(0, steps).OrderBy(i => Math.Abs(i - middle))];
        for (int l = steps - 1; l >= 0; l--)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (int a in outward)
                foreach (int b in outward)
                    grid.SolveNode(inverse, map, like, l, a, b);
        }

        return grid;
    }

    private sealed class Grid(int steps)
    {
        private const int N = InkInverse.Inks;
        private readonly int middle = (steps - 1) / 2;

        internal float[] Inks { get; } = new float[steps * steps * steps * N];

        internal float[] Distance { get; } = new float[steps * steps * steps];

        internal void SolveNode(InkInverse inverse, Func<Lab, Lab> map, Grid? like, int l, int a, int b)
        {
            // Start from the neighbour nearer to the neutral axis, on the axis from the node above.
            Span<double> start = stackalloc double[N], others = stackalloc double[(2 * N) + FarStarts.Length];
            int inA = a == middle ? a : a - Math.Sign(a - middle), inB = b == middle ? b : b - Math.Sign(b - middle), above = Math.Min(l + 1, steps - 1);
            Take(a == middle && b == middle ? above : l, b == middle ? inA : a, inB, start);

            // A table made before, for other wishes, gives nearly the same inks; without one the other neighbours help.
            Take(l, inA, b, others);
            Take(above, a, b, others[N..]);
            FarStarts.CopyTo(others[(2 * N)..]);
            like?.Take(l, a, b, others);

            // Far outside the gamut the neighbours lead to the right place; the far starts are for the first steps outside.
            bool enough = like is not null || Distance[Index(l, inA, inB)] > 4;
            Separated found = inverse.Solve(map(ProfileTables.Node(steps, l, a, b)), start, enough ? others[..(2 * N)] : others);
            Keep(inverse.Limits, Index(l, a, b), start, found);
        }

        private int Index(int l, int a, int b) => (((l * steps) + a) * steps) + b;

        private void Take(int l, int a, int b, Span<double> start)
        {
            int index = Index(l, a, b) * N;
            for (int ink = 0; ink < N; ink++)
                start[ink] = Inks[index + ink];
        }

        private void Keep(InkLimits limits, int index, ReadOnlySpan<double> inks, Separated found)
        {
            Distance[index] = (float)found.Distance;
            for (int ink = 0; ink < N; ink++)
                Inks[(index * N) + ink] = inks[ink] < 5e-5 ? 0 : (float)Math.Min(inks[ink], limits.PerInk[ink]);
        }
    }
}
