namespace Laydown.Optics.Layers;

/// <summary>Nodes and weights of integrals over 0 to 1, found by Newton's steps on Legendre polynomials (common practice, no
/// source).</summary>
internal static class Quadrature
{
    private const int Steps = 60;

    /// <summary>Gauss–Legendre nodes, ascending; exact for polynomials of degree 2·count − 1.</summary>
    internal static (double X, double Weight)[] Gauss(int count) => [.. Enumerable.Range(0, count).Select(i =>
    {
        double x = -Math.Cos(Math.PI * (i + 0.75) / (count + 0.5));
        for (int step = 0; step < Steps; step++)
            x -= Legendre(count, x).Value / Legendre(count, x).Slope;
        double slope = Legendre(count, x).Slope;
        return ((1 + x) / 2, 1 / ((1 - (x * x)) * slope * slope));
    })];

    /// <summary>Gauss–Radau nodes, ascending, the last of them 1; exact for polynomials of degree 2·count − 2.</summary>
    /// <remarks>The free nodes are the roots of (P_n + P_(n−1))/(1 + x) for an end at −1, mirrored here.</remarks>
    internal static (double X, double Weight)[] RadauToOne(int count)
    {
        List<(double X, double Weight)> nodes = [(-1, 2.0 / (count * count))];
        for (int i = 1; i < count; i++)
        {
            double x = -Math.Cos(2 * Math.PI * i / ((2 * count) - 1));
            for (int step = 0; step < Steps; step++)
            {
                (double high, double highSlope) = Legendre(count, x);
                (double low, double lowSlope) = Legendre(count - 1, x);
                x -= (high + low) / (highSlope + lowSlope);
            }

            double last = Legendre(count - 1, x).Value;
            nodes.Add((x, (1 - x) / (count * count * last * last)));
        }

        return [.. nodes.Select(n => ((1 - n.X) / 2, n.Weight / 2)).OrderBy(n => n.Item1)];
    }

    /// <summary>Legendre polynomials P_0 to P_(count − 1) at x.</summary>
    internal static double[] Polynomials(int count, double x)
    {
        double[] p = new double[count];
        for (int l = 0; l < count; l++)
            p[l] = l == 0 ? 1 : l == 1 ? x : ((((2 * l) - 1) * x * p[l - 1]) - ((l - 1) * p[l - 2])) / l;
        return p;
    }

    private static (double Value, double Slope) Legendre(int degree, double x)
    {
        double[] p = Polynomials(degree + 1, x);
        return degree == 0 ? (1, 0) : (p[degree], degree * ((x * p[degree]) - p[degree - 1]) / ((x * x) - 1));
    }
}
