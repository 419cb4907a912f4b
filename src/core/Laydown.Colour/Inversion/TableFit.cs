using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>Moves the nodes of a colour → ink table so that what is read between them prints the colour asked for.</summary>
/// <remarks>
/// Nodes that are right by themselves leave colours between them wrong where ink bends with colour: dark yellows by up to 3 ΔE00, as black
/// takes the place of cyan and magenta within one cell. So colours inside the cells are read, printed by the model, and what is missed is
/// put right by the smallest change of ink (Gauss–Newton), shared by the nodes of the cell (Kaczmarz's method), within the limits. Nodes
/// of the neutral axis stay. Measured on public offset charts: bench colour.
/// </remarks>
internal sealed class TableFit
{
    private const double Inside = 0.1;
    private const int Sweeps = 16;
    private const int Divisions = 2;
    private const double Relaxation = 0.7;
    private const double Hold = 0.05;
    private const double Damping = 1;
    private readonly InverseTable table;
    private readonly InkInverse inverse;
    private readonly InverseAxes axes;
    private readonly int steps;

    private TableFit(InverseTable table, InkInverse inverse, InverseAxes axes) =>
        (this.table, this.inverse, this.axes, steps) = (table, inverse, axes, axes.L.Count);

    /// <summary>Improves a table whose nodes ask for their own colours.</summary>
    internal static void Apply(InverseTable table, InkInverse inverse, InverseAxes axes, CancellationToken cancellation)
    {
        TableFit fit = new(table, inverse, axes);
        ParallelOptions how = new() { CancellationToken = cancellation };
        List<Sample>[] slices = new List<Sample>[fit.steps - 1];
        Parallel.For(0, slices.Length, how, l => slices[l] = fit.SamplesOf(l));

        // A slice touches the planes above and below it: every second slice can be worked at once, with the same result in any order.
        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            for (int parity = 0; parity < 2; parity++)
            {
                int first = parity;
                Parallel.For(0, (slices.Length + 1 - parity) / 2, how, i =>
                {
                    foreach (Sample sample in slices[(2 * i) + first])
                        fit.Improve(sample);
                });
            }
        }
    }

    // Colours that can be printed, in cells of which at least one node can.
    private List<Sample> SamplesOf(int l)
    {
        List<Sample> samples = [];
        for (int a = 0; a < steps - 1; a++)
        {
            for (int b = 0; b < steps - 1; b++)
            {
                int outside = 0;
                for (int corner = 0; corner < 8; corner++)
                    outside += table.Distance[Node(l, a, b, corner)] > Inside ? 1 : 0;
                if (outside < 8)
                    AddSamples(samples, l, a, b, outside > 0);
            }
        }

        return samples;
    }

    private void AddSamples(List<Sample> samples, int l, int a, int b, bool onEdge)
    {
        double[] inks = new double[inverse.Inks];
        for (int part = 0; part < Divisions * Divisions * Divisions; part++)
        {
            double Place(int digit) => ((digit % Divisions) + 0.5) / Divisions;
            (double x, double y, double z) = (Place(part), Place(part / Divisions), Place(part / (Divisions * Divisions)));
            Lab colour = new(Between(axes.L, l, x), Between(axes.A, a, y), Between(axes.B, b, z));
            Sample sample = new(l, a, b, x, y, z, colour);
            if (onEdge)
                Read(sample, inks);
            if (!onEdge || inverse.Solve(colour, inks).Distance < Inside)
                samples.Add(sample);
        }
    }

    private void Improve(Sample sample)
    {
        int inks = inverse.Inks;
        Span<double> read = stackalloc double[inks], apart = stackalloc double[3], rows = stackalloc double[3 * inks], moved = stackalloc double[inks];
        Read(sample, read);
        inverse.Slopes(sample.Colour, read, apart, rows);
        Smallest(apart, rows);

        double weight = Hold;
        for (int corner = 0; corner < 8; corner++)
            weight += OnNeutral(sample, corner) ? 0 : Share(sample, corner) * Share(sample, corner);
        for (int corner = 0; corner < 8; corner++)
        {
            if (OnNeutral(sample, corner))
                continue;
            int node = Node(sample.L, sample.A, sample.B, corner) * inks;
            double part = -Relaxation * Share(sample, corner) / weight;
            for (int ink = 0; ink < inks; ink++)
            {
                double change = (rows[3 * ink] * apart[0]) + (rows[(3 * ink) + 1] * apart[1]) + (rows[(3 * ink) + 2] * apart[2]);
                moved[ink] = table.Inks[node + ink] + (part * change);
            }

            inverse.Limits.Project(moved);
            for (int ink = 0; ink < inks; ink++)
                table.Inks[node + ink] = (float)moved[ink];
        }
    }

    // Replaces d by (J Jᵀ + λ)⁻¹ d: then Jᵀ times it is the smallest change of ink that makes d.
    private static void Smallest(Span<double> apart, ReadOnlySpan<double> rows)
    {
        double xx = Damping, yy = Damping, zz = Damping, xy = 0, xz = 0, yz = 0;
        for (int at = 0; at < rows.Length; at += 3)
        {
            (double x, double y, double z) = (rows[at], rows[at + 1], rows[at + 2]);
            (xx, yy, zz) = (xx + (x * x), yy + (y * y), zz + (z * z));
            (xy, xz, yz) = (xy + (x * y), xz + (x * z), yz + (y * z));
        }

        double a = (yy * zz) - (yz * yz), b = (xz * yz) - (xy * zz), c = (xy * yz) - (xz * yy);
        double determinant = (xx * a) + (xy * b) + (xz * c);
        double p = apart[0], q = apart[1], r = apart[2];
        apart[0] = ((a * p) + (b * q) + (c * r)) / determinant;
        apart[1] = ((b * p) + (((xx * zz) - (xz * xz)) * q) + (((xy * xz) - (xx * yz)) * r)) / determinant;
        apart[2] = ((c * p) + (((xy * xz) - (xx * yz)) * q) + (((xx * yy) - (xy * xy)) * r)) / determinant;
    }

    private bool OnNeutral(Sample sample, int corner) =>
        axes.A[sample.A + ((corner >> 1) & 1)] == 0 && axes.B[sample.B + (corner >> 2)] == 0;

    private void Read(Sample sample, Span<double> inks)
    {
        inks.Clear();
        for (int corner = 0; corner < 8; corner++)
        {
            double share = Share(sample, corner);
            int node = Node(sample.L, sample.A, sample.B, corner) * inks.Length;
            for (int ink = 0; ink < inks.Length; ink++)
                inks[ink] += share * table.Inks[node + ink];
        }
    }

    private static double Share(Sample sample, int corner) =>
        ((corner & 1) != 0 ? sample.X : 1 - sample.X) * ((corner & 2) != 0 ? sample.Y : 1 - sample.Y) * ((corner & 4) != 0 ? sample.Z : 1 - sample.Z);

    private int Node(int l, int a, int b, int corner) =>
        ((((l + (corner & 1)) * steps) + a + ((corner >> 1) & 1)) * steps) + b + (corner >> 2);

    private static double Between(IReadOnlyList<double> axis, int cell, double part) => axis[cell] + ((axis[cell + 1] - axis[cell]) * part);

    private readonly record struct Sample(int L, int A, int B, double X, double Y, double Z, Lab Colour);
}
